"""Tables of materials that go straight into a data frame."""

from __future__ import annotations

from collections.abc import Iterable
from html import escape
from typing import Any

__all__ = ["MaterialTable"]

#: Rows that a notebook shows before it says how many more there are.
_SHOWN = 20


class MaterialTable(list[dict[str, Any]]):
    """Materials as a list of rows; every row has every column, ``None`` where nothing is published.

    A data frame takes it as it is: ``pandas.DataFrame(table)``, ``polars.DataFrame(table)``. Units are the ends of the names;
    columns that end in ``source`` and ``evidence`` say where figures come from and whether they were seen there.

    Attributes
    ----------
    name : str
        Name of the table.
    columns : tuple of str
        Names of the columns, in order.
    """

    name: str
    columns: tuple[str, ...]

    def __init__(self, name: str, columns: Iterable[str], rows: Iterable[dict[str, Any]]) -> None:
        self.name, self.columns = name, tuple(columns)
        super().__init__({column: row.get(column) for column in self.columns} for row in rows)

    def column(self, name: str) -> list[Any]:
        """Values of one column, in the order of the rows.

        Parameters
        ----------
        name : str
            Name of the column.

        Returns
        -------
        list
            One value a row.

        Raises
        ------
        KeyError
            The table has no such column.
        """
        if name not in self.columns:
            raise KeyError(f"{name}: not a column of {self.name}; it has {', '.join(self.columns)}")
        return [row[name] for row in self]

    def to_dict(self) -> dict[str, list[Any]]:
        """The table by columns: name and values.

        Returns
        -------
        dict
            A list of values for each column, as data frames of columns and arrays want them.
        """
        return {name: self.column(name) for name in self.columns}

    def __repr__(self) -> str:
        return f"<MaterialTable {self.name}: {len(self)} rows, {len(self.columns)} columns>"

    def _repr_html_(self) -> str:
        told = [name for name in self.columns if any(row[name] not in (None, "") for row in self)]
        head = "".join(f"<th>{escape(name)}</th>" for name in told)
        rows = "".join(
            "<tr>" + "".join(f"<td>{_cell(row[name])}</td>" for name in told) + "</tr>" for row in self[:_SHOWN]
        )
        more = f"<p>and {len(self) - _SHOWN} more rows</p>" if len(self) > _SHOWN else ""
        return f"<table><caption>{escape(self.name)}</caption><thead><tr>{head}</tr></thead><tbody>{rows}</tbody></table>{more}"


def _cell(value: Any) -> str:
    return "" if value is None else escape(str(value))
