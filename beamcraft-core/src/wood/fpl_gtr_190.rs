//! Clear wood of North American and imported species, averages: Wood Handbook, FPL-GTR-190 (2010).
//!
//! Strength: Tables 5-3a and 5-5b, at 12 % moisture content. Shrinkage: Tables 4-3 and 4-4. Movement: Table 13-5.

use super::species::{Species, species_row};
use crate::cite::{Clause, Source};

const STRENGTH: Clause = Clause::new(Source::WoodHandbook2010, "Table 5-3a");
const STRENGTH_IMPORTED: Clause = Clause::new(Source::WoodHandbook2010, "Table 5-5b");
const SHRINKAGE: Clause = Clause::new(Source::WoodHandbook2010, "Table 4-3");
const SHRINKAGE_IMPORTED: Clause = Clause::new(Source::WoodHandbook2010, "Table 4-4");
const SHRINKAGE_2021: Clause = Clause::new(Source::WoodHandbook2021, "Table 4-3");
const MOVEMENT: Clause = Clause::new(Source::WoodHandbook2010, "Table 13-5");

/// One row a species.
pub(super) const ROWS: &[Species] = &[
    species_row! { "Alder, red", "Alnus rubra", Hardwood, NorthAmerica;
    gravity 0.37 Recalled, 0.41, _;
    strength 9500.0 68.0 40.1 3.0 7.4 2600.0, STRENGTH;
    shrinkage 4.4 7.3 12.6 SHRINKAGE Seen, 30.0;
    movement 0.00151 0.00256, "Alder, red", MOVEMENT Seen;
    nds _;
    "" },
    species_row! { "Ash, white", "Fraxinus americana", Hardwood, NorthAmerica;
    gravity 0.55 Seen, 0.6, _;
    strength 12000.0 103.0 51.1 8.0 13.2 5900.0, STRENGTH;
    shrinkage 4.9 7.8 13.3 SHRINKAGE Seen, 30.0;
    movement 0.00169 0.00274, "Ash, white", MOVEMENT Seen;
    nds _;
    "One transcription of the 2021 handbook has a modulus of rupture of 106 MPa." },
    species_row! { "Aspen, quaking", "Populus tremuloides", Hardwood, NorthAmerica;
    gravity 0.35 Recalled, 0.38, _;
    strength 8100.0 58.0 29.3 2.6 5.9 1600.0, STRENGTH;
    shrinkage 3.5 6.7 11.5 SHRINKAGE Seen, 30.0;
    movement 0.00119 0.00234, "Aspen, quaking", MOVEMENT Seen;
    nds "Aspen";
    "" },
    species_row! { "Basswood, American", "Tilia americana", Hardwood, NorthAmerica;
    gravity 0.32 Recalled, 0.37, _;
    strength 10100.0 60.0 32.6 2.6 6.8 1800.0, STRENGTH;
    shrinkage 6.6 9.3 15.8 SHRINKAGE Seen, 30.0;
    movement 0.0023 0.0033, "Basswood, American", MOVEMENT Seen;
    nds _;
    "Specific gravity at 12 % is 5 % above what follows from the green one and the shrinkage." },
    species_row! { "Beech, American", "Fagus grandifolia", Hardwood, NorthAmerica;
    gravity 0.56 Recalled, 0.64, _;
    strength 11900.0 103.0 50.3 7.0 13.9 5800.0, STRENGTH;
    shrinkage 5.5 11.9 17.2 SHRINKAGE Seen, 30.0;
    movement 0.0019 0.00431, "Beech, American", MOVEMENT Seen;
    nds "Beech-Birch-Hickory";
    "" },
    species_row! { "Birch, paper", "Betula papyrifera", Hardwood, NorthAmerica;
    gravity 0.48 Recalled, 0.55, _;
    strength 11000.0 85.0 39.2 4.1 8.3 4000.0, STRENGTH;
    shrinkage 6.3 8.6 16.2 SHRINKAGE Seen, 30.0;
    movement 0.00219 0.00304, "Birch, paper", MOVEMENT Seen;
    nds _;
    "" },
    species_row! { "Birch, yellow", "Betula alleghaniensis", Hardwood, NorthAmerica;
    gravity 0.55 Recalled, 0.62, _;
    strength 13900.0 114.0 56.3 6.7 13.0 5600.0, STRENGTH;
    shrinkage 7.3 9.5 16.8 SHRINKAGE Seen, 30.0;
    movement 0.00256 0.00338, "Birch, yellow", MOVEMENT Seen;
    nds "Beech-Birch-Hickory";
    "" },
    species_row! { "Butternut", "Juglans cinerea", Hardwood, NorthAmerica;
    gravity 0.36 Recalled, 0.38, _;
    strength 8100.0 56.0 36.2 3.2 8.1 2200.0, STRENGTH;
    shrinkage 3.4 6.4 10.6 SHRINKAGE Seen, 30.0;
    movement 0.00116 0.00223, "Butternut", MOVEMENT Seen;
    nds _;
    "" },
    species_row! { "Cherry, black", "Prunus serotina", Hardwood, NorthAmerica;
    gravity 0.47 Seen, 0.5, _;
    strength 10300.0 85.0 49.0 4.8 11.7 4200.0, STRENGTH;
    shrinkage 3.7 7.1 11.5 SHRINKAGE Seen, 30.0;
    movement 0.00126 0.00248, "Cherry, black", MOVEMENT Seen;
    nds _;
    "" },
    species_row! { "Chestnut, American", "Castanea dentata", Hardwood, NorthAmerica;
    gravity 0.4 Recalled, 0.43, _;
    strength 8500.0 59.0 36.7 4.3 7.4 2400.0, STRENGTH;
    shrinkage 3.4 6.7 11.6 SHRINKAGE Seen, 30.0;
    movement 0.00116 0.00234, "Chestnut, American", MOVEMENT Seen;
    nds _;
    "" },
    species_row! { "Cottonwood, eastern", "Populus deltoides", Hardwood, NorthAmerica;
    gravity 0.37 Recalled, 0.4, _;
    strength 9400.0 59.0 33.9 2.6 6.4 1900.0, STRENGTH;
    shrinkage 3.9 9.2 13.9 SHRINKAGE Seen, 30.0;
    movement 0.00133 0.00327, "Cottonwood, eastern", MOVEMENT Seen;
    nds "Cottonwood";
    "" },
    species_row! { "Elm, American", "Ulmus americana", Hardwood, NorthAmerica;
    gravity 0.46 Recalled, 0.5, _;
    strength 9200.0 81.0 38.1 4.8 10.4 3700.0, STRENGTH;
    shrinkage 4.2 9.5 14.6 SHRINKAGE Seen, 30.0;
    movement 0.00144 0.00338, "Elm, American", MOVEMENT Seen;
    nds _;
    "" },
    species_row! { "Elm, slippery", "Ulmus rubra", Hardwood, NorthAmerica;
    gravity 0.48 Recalled, 0.53, _;
    strength 10300.0 90.0 43.9 5.7 11.2 3800.0, STRENGTH;
    shrinkage 4.9 8.9 13.8 SHRINKAGE Seen, 30.0;
    movement 0.00169 0.00315, "Elm, slippery", MOVEMENT Seen;
    nds _;
    "" },
    species_row! { "Hackberry", "Celtis occidentalis", Hardwood, NorthAmerica;
    gravity 0.49 Recalled, 0.53, _;
    strength 8200.0 76.0 37.5 6.1 11.0 3900.0, STRENGTH;
    shrinkage 4.8 8.9 13.8 SHRINKAGE Seen, 30.0;
    movement 0.00165 0.00315, "Hackberry", MOVEMENT Seen;
    nds _;
    "" },
    species_row! { "Hickory, shagbark", "Carya ovata", Hardwood, NorthAmerica;
    gravity 0.64 Recalled, 0.72, _;
    strength 14900.0 139.0 63.5 12.1 16.8 8400.0, STRENGTH;
    shrinkage 7.0 10.5 16.7 SHRINKAGE Recalled, 30.0;
    movement 0.00259 0.00411, "Hickory, true (group)", MOVEMENT Recalled;
    nds "Beech-Birch-Hickory";
    "Movement coefficients are those of the group of true hickories." },
    species_row! { "Hickory, pecan", "Carya illinoinensis", Hardwood, NorthAmerica;
    gravity 0.6 Recalled, 0.66, _;
    strength 11900.0 94.0 54.1 11.9 14.3 8100.0, STRENGTH;
    shrinkage 4.9 8.9 13.6 SHRINKAGE Seen, 30.0;
    movement 0.00169 0.00315, "Hickory, pecan", MOVEMENT Seen;
    nds _;
    "" },
    species_row! { "Maple, red", "Acer rubrum", Hardwood, NorthAmerica;
    gravity 0.49 Recalled, 0.54, _;
    strength 11300.0 92.0 45.1 6.9 12.8 4200.0, STRENGTH;
    shrinkage 4.0 8.2 12.6 SHRINKAGE Recalled, 30.0;
    movement 0.00137 0.00289, "Maple, red", MOVEMENT Seen;
    nds "Red Maple";
    "" },
    species_row! { "Maple, silver", "Acer saccharinum", Hardwood, NorthAmerica;
    gravity 0.44 Recalled, 0.47, _;
    strength 7900.0 61.0 36.0 5.1 10.2 3100.0, STRENGTH;
    shrinkage 3.0 7.2 12.0 SHRINKAGE Recalled, 30.0;
    movement 0.00102 0.00252, "Maple, silver", MOVEMENT Seen;
    nds "Mixed Maple";
    "" },
    species_row! { "Maple, sugar (hard)", "Acer saccharum", Hardwood, NorthAmerica;
    gravity 0.56 Seen, 0.63, _;
    strength 12600.0 109.0 54.0 10.1 16.1 6400.0, STRENGTH;
    shrinkage 4.8 9.9 14.7 SHRINKAGE_2021 Seen, 30.0;
    movement 0.00165 0.00353, "Maple, sugar", MOVEMENT Seen;
    nds "Mixed Maple";
    "" },
    species_row! { "Oak, northern red", "Quercus rubra", Hardwood, NorthAmerica;
    gravity 0.56 Seen, 0.63, _;
    strength 12500.0 99.0 46.6 7.0 12.3 5700.0, STRENGTH;
    shrinkage 4.0 8.6 13.7 SHRINKAGE_2021 Seen, 30.0;
    movement 0.00158 0.00369, "Red oak, commercial (group)", MOVEMENT Seen;
    nds "Northern Red Oak";
    "Movement coefficients are those of the group of commercial red oaks." },
    species_row! { "Oak, southern red", "Quercus falcata", Hardwood, NorthAmerica;
    gravity 0.52 Recalled, 0.59, _;
    strength 10300.0 75.0 42.0 6.0 9.6 4700.0, STRENGTH;
    shrinkage 4.7 11.3 16.1 SHRINKAGE Recalled, 30.0;
    movement 0.00158 0.00369, "Red oak, commercial (group)", MOVEMENT Seen;
    nds "Red Oak";
    "Movement coefficients are those of the group of commercial red oaks." },
    species_row! { "Oak, white", "Quercus alba", Hardwood, NorthAmerica;
    gravity 0.6 Seen, 0.68, _;
    strength 12300.0 105.0 51.3 7.4 13.8 6000.0, STRENGTH;
    shrinkage 5.6 10.5 16.3 SHRINKAGE Seen, 30.0;
    movement 0.0018 0.00365, "White oak, commercial (group)", MOVEMENT Seen;
    nds "White Oak";
    "Movement coefficients are those of the group of commercial white oaks." },
    species_row! { "Sweetgum", "Liquidambar styraciflua", Hardwood, NorthAmerica;
    gravity 0.46 Recalled, 0.52, _;
    strength 11300.0 86.0 43.6 4.3 11.0 3800.0, STRENGTH;
    shrinkage 5.3 10.2 15.8 SHRINKAGE Seen, 30.0;
    movement 0.00183 0.00365, "Sweetgum", MOVEMENT Seen;
    nds _;
    "" },
    species_row! { "Sycamore, American", "Platanus occidentalis", Hardwood, NorthAmerica;
    gravity 0.46 Recalled, 0.49, _;
    strength 9800.0 69.0 37.1 4.8 10.1 3400.0, STRENGTH;
    shrinkage 5.0 8.4 14.1 SHRINKAGE Seen, 30.0;
    movement 0.00172 0.00296, "Sycamore, American", MOVEMENT Seen;
    nds _;
    "" },
    species_row! { "Walnut, black", "Juglans nigra", Hardwood, NorthAmerica;
    gravity 0.51 Recalled, 0.55, _;
    strength 11600.0 101.0 52.3 7.0 9.4 4500.0, STRENGTH;
    shrinkage 5.5 7.8 12.8 SHRINKAGE Seen, 30.0;
    movement 0.0019 0.00274, "Walnut, black", MOVEMENT Seen;
    nds _;
    "" },
    species_row! { "Yellow-poplar", "Liriodendron tulipifera", Hardwood, NorthAmerica;
    gravity 0.4 Seen, 0.42, _;
    strength 10900.0 70.0 38.2 3.4 8.2 2400.0, STRENGTH;
    shrinkage 4.6 8.2 12.7 SHRINKAGE Seen, 30.0;
    movement 0.00158 0.00289, "Yellow-poplar", MOVEMENT Recalled;
    nds "Yellow Poplar";
    "" },
    species_row! { "Baldcypress", "Taxodium distichum", Softwood, NorthAmerica;
    gravity 0.42 Recalled, 0.46, _;
    strength 9900.0 73.0 43.9 5.0 6.9 2300.0, STRENGTH;
    shrinkage 3.8 6.2 10.5 SHRINKAGE Recalled, 30.0;
    movement 0.0013 0.00216, "Baldcypress", MOVEMENT Recalled;
    nds _;
    "" },
    species_row! { "Cedar, eastern redcedar", "Juniperus virginiana", Softwood, NorthAmerica;
    gravity 0.44 Recalled, 0.47, _;
    strength 6100.0 61.0 41.5 6.3 _ 4000.0, STRENGTH;
    shrinkage 3.1 4.7 7.8 SHRINKAGE Seen, 30.0;
    movement 0.00106 0.00162, "Cedar, eastern red", MOVEMENT Recalled;
    nds _;
    "" },
    species_row! { "Cedar, incense", "Calocedrus decurrens", Softwood, NorthAmerica;
    gravity 0.35 Recalled, 0.37, _;
    strength 7200.0 55.0 35.9 4.1 6.1 2100.0, STRENGTH;
    shrinkage 3.3 5.2 7.7 SHRINKAGE Seen, 30.0;
    movement 0.00112 0.0018, "Cedar, incense", MOVEMENT Recalled;
    nds "Western Cedars";
    "" },
    species_row! { "Cedar, western redcedar", "Thuja plicata", Softwood, NorthAmerica;
    gravity 0.31 Recalled, 0.32, _;
    strength 7700.0 51.7 31.4 3.2 6.8 1600.0, STRENGTH;
    shrinkage 2.4 5.0 6.8 SHRINKAGE Seen, 22.0;
    movement 0.00111 0.00234, "Cedar, western red", MOVEMENT Recalled;
    nds "Western Cedars";
    "Low fibre saturation: with 22 % the printed coefficients follow from the shrinkage." },
    species_row! { "Cedar, yellow", "Cupressus nootkatensis", Softwood, NorthAmerica;
    gravity 0.42 Recalled, 0.44, _;
    strength 9800.0 77.0 43.5 4.3 7.8 2600.0, STRENGTH;
    shrinkage 2.8 6.0 9.2 SHRINKAGE Seen, 30.0;
    movement 0.00095 0.00208, "Cedar, yellow", MOVEMENT Recalled;
    nds "Alaska Cedar";
    "" },
    species_row! { "Douglas-fir, coast", "Pseudotsuga menziesii", Softwood, NorthAmerica;
    gravity 0.45 Seen, 0.48, _;
    strength 13400.0 85.0 49.9 5.5 7.8 3200.0, STRENGTH;
    shrinkage 4.8 7.6 12.4 SHRINKAGE Seen, 30.0;
    movement 0.00165 0.00267, "Douglas-fir, coast-type", MOVEMENT Recalled;
    nds "Douglas Fir-Larch";
    "" },
    species_row! { "Fir, white", "Abies concolor", Softwood, NorthAmerica;
    gravity 0.37 Seen, 0.39, _;
    strength 10300.0 68.0 40.0 3.7 7.6 2100.0, STRENGTH;
    shrinkage 3.3 7.0 9.8 SHRINKAGE Seen, 30.0;
    movement 0.00112 0.00245, "Fir, white", MOVEMENT Seen;
    nds "Hem-Fir";
    "" },
    species_row! { "Hemlock, eastern", "Tsuga canadensis", Softwood, NorthAmerica;
    gravity 0.38 Seen, 0.4, _;
    strength 8300.0 61.0 37.3 4.5 7.3 2200.0, STRENGTH;
    shrinkage 3.0 6.8 9.7 SHRINKAGE_2021 Seen, 30.0;
    movement 0.00102 0.00237, "Hemlock, eastern", MOVEMENT Recalled;
    nds "Eastern Hemlock";
    "" },
    species_row! { "Hemlock, western", "Tsuga heterophylla", Softwood, NorthAmerica;
    gravity 0.42 Seen, 0.45, _;
    strength 11300.0 78.0 49.0 3.8 8.6 2400.0, STRENGTH;
    shrinkage 4.2 7.8 12.4 SHRINKAGE_2021 Seen, 30.0;
    movement 0.00144 0.00274, "Hemlock, western", MOVEMENT Recalled;
    nds "Western Hemlock";
    "" },
    species_row! { "Larch, western", "Larix occidentalis", Softwood, NorthAmerica;
    gravity 0.48 Seen, 0.52, _;
    strength 12900.0 90.0 52.5 6.4 9.4 3700.0, STRENGTH;
    shrinkage 4.5 9.1 14.0 SHRINKAGE_2021 Seen, 30.0;
    movement 0.00155 0.00323, "Larch, western", MOVEMENT Recalled;
    nds "Douglas Fir-Larch";
    "" },
    species_row! { "Pine, eastern white", "Pinus strobus", Softwood, NorthAmerica;
    gravity 0.34 Recalled, 0.35, _;
    strength 8500.0 59.0 33.1 3.0 6.2 1700.0, STRENGTH;
    shrinkage 2.1 6.1 8.2 SHRINKAGE Recalled, 30.0;
    movement 0.00071 0.00212, "Pine, eastern white", MOVEMENT Recalled;
    nds "Eastern White Pine";
    "" },
    species_row! { "Pine, loblolly", "Pinus taeda", Softwood, NorthAmerica;
    gravity 0.47 Seen, 0.51, _;
    strength 12300.0 88.0 49.2 5.4 9.6 3100.0, STRENGTH;
    shrinkage 4.8 7.4 12.3 SHRINKAGE_2021 Seen, 30.0;
    movement 0.00165 0.00259, "Pine, loblolly", MOVEMENT Recalled;
    nds "Southern Pine";
    "" },
    species_row! { "Pine, lodgepole", "Pinus contorta", Softwood, NorthAmerica;
    gravity 0.38 Seen, 0.41, _;
    strength 9200.0 65.0 37.0 4.2 6.1 2100.0, STRENGTH;
    shrinkage 4.3 6.7 11.1 SHRINKAGE_2021 Seen, 30.0;
    movement 0.00148 0.00234, "Pine, lodgepole", MOVEMENT Recalled;
    nds "Engelmann Spruce-Lodgepole Pine";
    "" },
    species_row! { "Pine, longleaf", "Pinus palustris", Softwood, NorthAmerica;
    gravity 0.54 Seen, 0.59, _;
    strength 13700.0 100.0 58.4 6.6 10.4 3900.0, STRENGTH;
    shrinkage 5.1 7.5 12.2 SHRINKAGE_2021 Seen, 30.0;
    movement 0.00176 0.00263, "Pine, longleaf", MOVEMENT Recalled;
    nds "Southern Pine";
    "" },
    species_row! { "Pine, ponderosa", "Pinus ponderosa", Softwood, NorthAmerica;
    gravity 0.38 Seen, 0.4, _;
    strength 8900.0 65.0 36.7 4.0 7.8 2000.0, STRENGTH;
    shrinkage 3.9 6.2 9.7 SHRINKAGE Recalled, 30.0;
    movement 0.00133 0.00216, "Pine, ponderosa", MOVEMENT Recalled;
    nds "Ponderosa Pine";
    "" },
    species_row! { "Pine, red", "Pinus resinosa", Softwood, NorthAmerica;
    gravity 0.41 Seen, 0.46, _;
    strength 11200.0 76.0 41.9 4.1 8.4 2500.0, STRENGTH;
    shrinkage 3.8 7.2 11.3 SHRINKAGE Recalled, 30.0;
    movement 0.0013 0.00252, "Pine, red", MOVEMENT Recalled;
    nds "Red Pine";
    "" },
    species_row! { "Pine, shortleaf", "Pinus echinata", Softwood, NorthAmerica;
    gravity 0.47 Seen, 0.51, _;
    strength 12100.0 90.0 50.1 5.7 9.6 3100.0, STRENGTH;
    shrinkage 4.6 7.7 12.3 SHRINKAGE_2021 Seen, 30.0;
    movement 0.00158 0.00271, "Pine, shortleaf", MOVEMENT Recalled;
    nds "Southern Pine";
    "" },
    species_row! { "Pine, slash", "Pinus elliottii", Softwood, NorthAmerica;
    gravity 0.54 Seen, 0.59, _;
    strength 13700.0 112.0 56.1 7.0 11.6 _, STRENGTH;
    shrinkage 5.4 7.6 12.1 SHRINKAGE_2021 Seen, 30.0;
    movement 0.00187 0.00267, "Pine, slash", MOVEMENT Recalled;
    nds "Southern Pine";
    "" },
    species_row! { "Pine, sugar", "Pinus lambertiana", Softwood, NorthAmerica;
    gravity 0.34 Seen, 0.36, _;
    strength 8200.0 57.0 30.8 3.4 7.8 1700.0, STRENGTH;
    shrinkage 2.9 5.6 7.9 SHRINKAGE Recalled, 30.0;
    movement 0.00099 0.00194, "Pine, sugar", MOVEMENT Recalled;
    nds _;
    "" },
    species_row! { "Pine, western white", "Pinus monticola", Softwood, NorthAmerica;
    gravity 0.35 Seen, 0.38, _;
    strength 10100.0 67.0 34.7 3.2 7.2 1900.0, STRENGTH;
    shrinkage 4.1 7.4 11.8 SHRINKAGE Recalled, 30.0;
    movement 0.00141 0.00259, "Pine, western white", MOVEMENT Recalled;
    nds "Western White Pine";
    "Specific gravities from the inch-pound table; the metric table prints 0.36 green and 0.35 at 12 %, which cannot be." },
    species_row! { "Redwood, old-growth", "Sequoia sempervirens", Softwood, NorthAmerica;
    gravity 0.38 Seen, 0.4, _;
    strength 9200.0 69.0 42.4 4.8 6.5 2100.0, STRENGTH;
    shrinkage 2.6 4.4 6.8 SHRINKAGE Recalled, 22.0;
    movement 0.0012 0.00205, "Redwood, old-growth", MOVEMENT Recalled;
    nds "Redwood";
    "Low fibre saturation: with 22 % the printed coefficients follow from the shrinkage." },
    species_row! { "Redwood, young-growth", "Sequoia sempervirens", Softwood, NorthAmerica;
    gravity 0.34 Seen, 0.35, _;
    strength 7600.0 54.0 36.0 3.6 7.6 1900.0, STRENGTH;
    shrinkage 2.2 4.9 7.0 SHRINKAGE Recalled, 22.0;
    movement 0.00101 0.00229, "Redwood, second-growth", MOVEMENT Recalled;
    nds "Redwood";
    "Low fibre saturation: with 22 % the printed coefficients follow from the shrinkage." },
    species_row! { "Spruce, Engelmann", "Picea engelmannii", Softwood, NorthAmerica;
    gravity 0.33 Seen, 0.35, _;
    strength 8900.0 64.0 30.9 2.8 8.3 1750.0, STRENGTH;
    shrinkage 3.8 7.1 11.0 SHRINKAGE_2021 Seen, 30.0;
    movement 0.0013 0.00248, "Spruce, Engelmann", MOVEMENT Recalled;
    nds "Engelmann Spruce-Lodgepole Pine";
    "" },
    species_row! { "Spruce, red", "Picea rubens", Softwood, NorthAmerica;
    gravity 0.37 Recalled, 0.4, _;
    strength 11400.0 74.0 38.2 3.8 8.9 2200.0, STRENGTH;
    shrinkage 3.8 7.8 11.8 SHRINKAGE Recalled, 30.0;
    movement 0.0013 0.00274, "Spruce, red", MOVEMENT Recalled;
    nds "Eastern Spruce";
    "" },
    species_row! { "Spruce, Sitka", "Picea sitchensis", Softwood, NorthAmerica;
    gravity 0.37 Recalled, 0.4, _;
    strength 10800.0 70.0 38.7 4.0 7.9 2300.0, STRENGTH;
    shrinkage 4.3 7.5 11.5 SHRINKAGE Recalled, 30.0;
    movement 0.00148 0.00263, "Spruce, Sitka", MOVEMENT Recalled;
    nds "Sitka Spruce";
    "" },
    species_row! { "Spruce, white", "Picea glauca", Softwood, NorthAmerica;
    gravity 0.33 Recalled, 0.36, _;
    strength 9600.0 65.0 35.7 3.0 6.7 1800.0, STRENGTH;
    shrinkage _, 30.0;
    movement 0.0013 0.00274, "Spruce, white", MOVEMENT Recalled;
    nds "Eastern Spruce";
    "No shrinkage values found." },
    species_row! { "Teak", "Tectona grandis", Hardwood, Imported;
    gravity 0.55 Seen, _, _;
    strength 10700.0 100.7 58.0 _ 13.0 4448.0, STRENGTH_IMPORTED;
    shrinkage 2.5 5.8 7.0 SHRINKAGE_IMPORTED Recalled, 30.0;
    movement 0.00101 0.00186, "Teak", MOVEMENT Recalled;
    nds _;
    "Movement coefficients do not follow from the shrinkage: weak. Strengths converted from psi and lbf." },
];
