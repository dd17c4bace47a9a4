"""Tables of materials."""

import pytest

import beamcraft

TABLES = ["species", "strength_classes", "panels", "nds_combinations"]


@pytest.mark.parametrize("name", TABLES)
def test_rows_have_every_column_and_a_source(name: str) -> None:
    table = beamcraft.materials(name)
    assert isinstance(table, list) and len(table) > 5 and table.columns[0] == "name"
    assert any(column.endswith("source") for column in table.columns)
    assert any(column.endswith("evidence") for column in table.columns)
    for row in table:
        assert tuple(row) == table.columns
    columns = table.to_dict()
    assert list(columns) == list(table.columns)
    assert all(len(values) == len(table) for values in columns.values())


def test_figures_are_those_of_the_record() -> None:
    species = beamcraft.materials("species")
    row = species[beamcraft.find_material("species", "Fraxinus americana")]
    record = beamcraft.find_species(name="white ash")
    assert row["name"] == record.species.name
    assert row["movement_tangential_per_pct"] == record.species.movement_tangential_per_pct
    assert row["density_12_kg_m3"] == record.density_12.density_kg_m3
    assert row["density_published_kg_m3"] is None
    assert row["movement_evidence"] in ("seen", "recalled")
    classes = beamcraft.materials("strength_classes")
    assert classes[beamcraft.find_material("strength_classes", "c24")]["bending_mpa"] == 24.0


def test_a_notebook_shows_a_table_that_is_escaped() -> None:
    shown = beamcraft.materials("species")._repr_html_()
    assert shown.startswith("<table>") and "<th>density_12_kg_m3</th>" in shown and "more rows" in shown
    assert shown.count("<tr>") == 21
    table = beamcraft.MaterialTable("<t>", ["a", "b"], [{"a": "<x>"}, {"b": 1}])
    assert "&lt;x&gt;" in table._repr_html_() and "<x>" not in table._repr_html_()
    assert table == [{"a": "<x>", "b": None}, {"a": None, "b": 1}]
    assert repr(table) == "<MaterialTable <t>: 2 rows, 2 columns>"


def test_misses_help() -> None:
    with pytest.raises(beamcraft.BeamcraftError, match="did you mean species"):
        beamcraft.materials("specie")
    with pytest.raises(beamcraft.BeamcraftError, match="did you mean Ash, white"):
        beamcraft.find_material("species", "whit ash")
    with pytest.raises(beamcraft.BeamcraftError, match="several fit"):
        beamcraft.find_material("species", "ash")
    with pytest.raises(KeyError, match="not a column"):
        beamcraft.materials("panels").column("colour")
