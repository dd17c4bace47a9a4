//! Where an equation, a rule or a figure comes from.
//!
//! Every number that is not geometry names a [`Source`]; a result that follows a published rule names the [`Clause`].
//! The sources page of the book and the verification tables use the same ids.

use core::fmt;

/// How far a figure of a source was checked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum Evidence {
    /// Read in the publication or in a public extract of it.
    Seen,
    /// Recalled; to be confirmed before it is relied upon.
    Recalled,
    /// A fact of the trade without a published source.
    CommonPractice,
    /// Follows from geometry or equilibrium, shown in the docs.
    Derived,
}

macro_rules! sources {
    ($($(#[doc = $doc:literal])+ $variant:ident, $id:literal, $title:literal, $evidence:ident;)+) => {
        /// A publication, a fact of the trade, or our own derivation.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
        #[non_exhaustive]
        pub enum Source {
            $($(#[doc = $doc])+ #[cfg_attr(feature = "json", serde(rename = $id))] $variant,)+
        }

        impl Source {
            /// Every source, in the order of the sources page.
            pub const ALL: &'static [Source] = &[$(Source::$variant,)+];

            /// Short id used in tables, rows and clauses.
            pub const fn id(self) -> &'static str {
                match self { $(Source::$variant => $id,)+ }
            }

            /// Full title.
            pub const fn title(self) -> &'static str {
                match self { $(Source::$variant => $title,)+ }
            }

            /// How the figures taken from it were checked.
            pub const fn evidence(self) -> Evidence {
                match self { $(Source::$variant => Evidence::$evidence,)+ }
            }
        }
    };
}

sources! {
    /// National Design Specification for Wood Construction, 2018 edition.
    Nds2018, "NDS 2018", "ANSI/AWC NDS, National Design Specification for Wood Construction, 2018 edition", Seen;
    /// AWC Technical Report 12.
    Tr12, "AWC TR12", "AWC Technical Report 12, General Dowel Equations for Calculating Lateral Connection Values", Seen;
    /// Wood Handbook, 2010 edition.
    WoodHandbook2010, "FPL-GTR-190", "USDA Forest Products Laboratory, Wood Handbook: Wood as an Engineering Material, FPL-GTR-190 (2010)", Seen;
    /// Wood Handbook, 2021 edition.
    WoodHandbook2021, "FPL-GTR-282", "USDA Forest Products Laboratory, Wood Handbook: Wood as an Engineering Material, FPL-GTR-282 (2021)", Seen;
    /// Wood Handbook, 1999 edition.
    WoodHandbook1999, "FPL-GTR-113", "USDA Forest Products Laboratory, Wood Handbook: Wood as an Engineering Material, FPL-GTR-113 (1999)", Seen;
    /// Strength and density of European woods.
    Niemz1993, "Niemz 1993", "P. Niemz, Physik des Holzes und der Holzwerkstoffe (1993), as tabulated on a public page", Seen;
    /// Movement of European woods.
    RijsdijkLaming1994, "Rijsdijk & Laming 1994", "J. F. Rijsdijk, P. B. Laming, Physical and Related Properties of 145 Timbers (1994), as tabulated on a public page", Seen;
    /// Conversion factors.
    NistSp811, "NIST SP 811", "NIST Special Publication 811, Guide for the Use of the International System of Units, appendix B", Recalled;
    /// Screw dimensions.
    AsmeB1861, "ASME B18.6.1", "ASME B18.6.1, Wood Screws (Inch Series)", Recalled;
    /// Lag screw dimensions.
    AsmeB1821, "ASME B18.2.1", "ASME B18.2.1, Square, Hex, Heavy Hex, and Askew Head Bolts and Hex, Heavy Hex, Hex Flange, Lobed Head, and Lag Screws (Inch Series), as tabulated on public pages", Seen;
    /// Nail dimensions.
    AstmF1667, "ASTM F1667", "ASTM F1667, Driven Fasteners: Nails, Spikes, and Staples, as in NDS 2018 Appendix L, Table L4", Recalled;
    /// Post-frame ring shank nails.
    AwcDesignAid4, "AWC Design Aid 4", "AWC Design Aid No. 4, Post-Frame Ring Shank Nails (2005)", Seen;
    /// Metric wood screw threads.
    Din7998, "DIN 7998", "DIN 7998, threads of wood screws, with DIN 96, DIN 97 and DIN 571 (a conference handbook on wood screws gives the ranges)", Recalled;
    /// Screw dimensions of the trade.
    ScrewPages, "screw pages", "Public screw dimension pages: thread, body and head of production wood screws", Seen;
    /// Film arithmetic.
    FilmArithmetic, "film arithmetic", "Film build from volume solids: spread rate 10 VS / DFT (coatings technical note, public copy)", Seen;
    /// Transfer efficiency by method of application.
    EpaTransfer, "40 CFR 60.313", "US EPA metal-furniture performance standard, transfer efficiencies (state copy: Wisconsin NR 440.48 Table 1)", Seen;
    /// Finishing guides.
    FinishingGuides, "finishing guides", "General guides and articles on finishing wood, several public pages that differ by factors of two to five", Seen;
    /// Coverage and drying tables.
    FinishingTextbook, "finishing textbook", "Coverage and drying table reprinted in wood-finishing textbooks, edition not recalled", Recalled;
    /// Statements on coverage.
    CoveragePages, "coverage pages", "Public question-and-answer and home-improvement pages on coating coverage", Seen;
    /// Volume solids.
    SolidsColumn, "volume-solids column", "Trade column on the volatiles and the volume solids of wood coatings", Seen;
    /// Film targets.
    DryFilmPage, "dry-film page", "Finishing consultant's page on wet and dry film thickness of sprayed furniture finishes", Seen;
    /// Shop records of coating use.
    FinishingCaseStudies, "finishing case studies", "State pollution-prevention case studies, wood furniture finishing", Seen;
    /// Transfer efficiency accepted by rule.
    UtahWoodFurniture, "Utah R307-343", "Utah R307-343-5, wood furniture manufacturing: methods accepted as reaching 65 % transfer", Seen;
    /// Solvent limits, European Union.
    VocDirective, "2004/42/EC", "Directive 2004/42/EC, Annex II A, phase II from 2010 (national transpositions)", Seen;
    /// Solvent limits, South Coast air district.
    SouthCoast1113, "SCAQMD 1113", "South Coast Rule 1113, architectural coatings (trade report of the 2003 amendments)", Seen;
    /// Abrasive grades.
    AbrasiveGrades, "ISO 6344", "ISO 6344 / FEPA P grades of coated abrasives (grade tables on public pages; the standard itself not read)", Seen;
    /// Compound-angle settings.
    CompoundAngleChart, "compound-angle chart", "Table-saw instruction manual, chart of compound-angle settings for popular structures", Seen;
    /// International Residential Code.
    Irc, "IRC", "International Residential Code, R1001.11 (masonry fireplaces) and M1306.1 (listed appliances)", Seen;
    /// Lifting equation.
    Niosh94110, "NIOSH 94-110", "NIOSH Publication 94-110, Applications Manual for the Revised NIOSH Lifting Equation (1994, revised 2021)", Seen;
    /// Chimneys, fireplaces and vents.
    Nfpa211, "NFPA 211", "NFPA 211, Standard for Chimneys, Fireplaces, Vents and Solid Fuel-Burning Appliances, clause 7-3.3.3 as quoted in installation manuals", Seen;
    /// National Building Code of Canada, read in the Ontario adoption.
    NbcCanada, "NBC Canada", "National Building Code of Canada, 9.22.9.3 (wording read in the Ontario adoption, number recalled)", Seen;
    /// Bolted brackets.
    Bhandari, "Bhandari", "V. B. Bhandari, Design of Machine Elements, Examples 7.5 to 7.9 (inputs and areas in an open textbook companion)", Seen;
    /// Strength classes.
    En338, "EN 338", "EN 338:2016, Structural timber, strength classes (values seen in an open-source design package that states it)", Seen;
    /// Determination of characteristic values.
    En384, "EN 384", "EN 384:2016, Structural timber, determination of characteristic values: ratios between properties", Recalled;
    /// Structural panels.
    PocketBook, "pocket book", "Structural engineering pocket book, Eurocode edition, table of timber properties p. 266 (traces to EN 12369)", Seen;
    /// Plywood data.
    PlywoodPage, "plywood page", "Public materials-property page on generic softwood plywood, sheathing grade", Seen;
    /// Particleboard grades.
    AnsiA2081, "ANSI A208.1", "ANSI A208.1-1999, particleboard grades (reproduced in the Wood Handbook)", Recalled;
    /// Fibreboard grades.
    AnsiA2082, "ANSI A208.2", "ANSI A208.2-2002, medium-density fibreboard grades (reproduced in the Wood Handbook)", Recalled;
    /// Fibreboard specifications.
    En622, "EN 622-5", "EN 622-5, fibreboards, dry-process boards (MDF), Table 3", Recalled;
    /// Particleboard specifications.
    En312, "EN 312", "EN 312:2010, particleboards, specifications", Recalled;
    /// Characteristic values of panels.
    En12369, "EN 12369-1", "EN 12369-1:2001, wood-based panels, characteristic values: OSB, particleboards and fibreboards", Recalled;
    /// Saturation of moist air.
    HylandWexler, "Hyland-Wexler 1983", "R. W. Hyland, A. Wexler, ASHRAE Transactions 89 (1983) 500-519; equations 5 and 6 of the ASHRAE Handbook of Fundamentals, chapter 1", Recalled;
    /// Eurocode 5.
    En1995, "EN 1995-1-1", "EN 1995-1-1:2004 with A1:2008 and A2:2014, Eurocode 5: Design of timber structures, common rules and rules for buildings (read through an open library, handbooks and course examples that cite its clauses)", Seen;
    /// Eurocode 5, German national annex.
    DinEn1995Na, "DIN EN 1995-1-1/NA", "DIN EN 1995-1-1/NA, German national annex to Eurocode 5: simplified method for dowel joints (recalled; confirmed by tabulated handbook values)", Recalled;
    /// Hardwood grading and measurement.
    NhlaRules, "NHLA rules", "Rules for the measurement and inspection of hardwood lumber: thickness table, grade chart and surface measure as reprinted on public trade pages", Seen;
    /// Sizes of softwood lumber.
    Ps20, "PS 20", "Voluntary Product Standard PS 20, American Softwood Lumber Standard (size tables as reprinted on a public engineering reference page)", Seen;
    /// Deviations of structural timber.
    En336, "EN 336", "EN 336, Structural timber: sizes, permitted deviations (public summaries)", Seen;
    /// Sizes of sawn softwood.
    En1313, "EN 1313-1", "EN 1313-1:2010, Round and sawn timber: permitted deviations and preferred sizes, softwood (preview)", Seen;
    /// Clamps.
    ClampArticles, "clamp articles", "Trade articles on clamp pressure by wood and on the pressure cone under a clamp head (public copies)", Seen;
    /// Lumber size control.
    OsuEm8731, "EM 8731", "Oregon State University Extension, EM 8731 (2000), lumber size control", Seen;
    /// A fact of the trade.
    CommonPractice, "common practice", "Common practice of the trade, no published source", CommonPractice;
    /// Equilibrium.
    Statics, "statics", "Equilibrium of forces and moments, derived in docs/src/theory", Derived;
    /// A rule or figure of the user's own.
    Given, "given", "Given by the user, who vouches for its origin", CommonPractice;
    /// Plane and solid geometry.
    Geometry, "geometry", "Plane and solid geometry, derived in docs/src/theory", Derived;
    /// Diffusion in a plane sheet.
    Crank, "Crank", "J. Crank, The Mathematics of Diffusion, plane sheet and half-space with surface resistance (edition not recalled)", Recalled;
    /// Humidity as weather services state it.
    Wmo8, "WMO-No. 8", "World Meteorological Organization, WMO-No. 8, Guide to Instruments and Methods of Observation: vapour pressure over water and ice", Recalled;
    /// Acclimation of wood before it is installed.
    ExtensionAdvice, "extension advice", "University extension advice on wood moisture and glue lines, as public trade pages quote it", Seen;
    /// Movement along the grain.
    AwcMovement, "AWC movement", "American Wood Council, public answer on dimensional change: 0.1 % to 0.2 % along the grain from green to ovendry", Seen;
    /// Shrinkage of lumber.
    FplRp489, "FPL-RP-489", "USDA Forest Products Laboratory, Research Paper FPL-RP-489, shrinkage of lumber by its moisture content", Seen;
    /// General tolerances.
    Iso2768, "ISO 2768-1", "ISO 2768-1:1989, general tolerances for linear and angular dimensions (reprint of DIN ISO 2768-1, Table 1)", Seen;
    /// Joints of architectural woodwork.
    WoodworkStandards, "woodwork standards", "Architectural Woodwork Standards, edition 1 (2009), flushness and gaps of joints (page copies)", Seen;
    /// Error of a mitre.
    MachineAlignment, "machine alignment", "Public router, table-saw and machine-alignment pages: the error at a mitre is twice that of a cut", Seen;
    /// Inverse of the normal distribution.
    Wichura1988, "AS 241", "M. J. Wichura, Algorithm AS 241: the percentage points of the normal distribution, Applied Statistics 37 (1988)", Recalled;
    /// Counter-based random numbers.
    Salmon2011, "Salmon 2011", "J. K. Salmon, M. A. Moraes, R. O. Dror, D. E. Shaw, Parallel Random Numbers: As Easy as 1, 2, 3, SC11 (2011)", Recalled;
    /// Tapping screw dimensions.
    AsmeB1864, "ASME B18.6.4", "ASME B18.6.4, Thread Forming and Thread Cutting Tapping Screws (Inch Series): thread AB, hexagon washer head", Recalled;
    /// Load combinations, American.
    Asce7, "ASCE 7", "ASCE/SEI 7, Minimum Design Loads and Associated Criteria for Buildings and Other Structures, 2.3 and 2.4", Recalled;
    /// Load combinations, European.
    En1990, "EN 1990", "EN 1990:2002 with A1:2005, Eurocode: Basis of structural design, expressions 6.10 and 6.11, Tables A1.1 and A1.2(B)", Recalled;
    /// Buildings other than small dwellings.
    Ibc, "IBC", "International Building Code, 2111.11, combustible trim at masonry fireplaces", Recalled;
    /// A legacy building code.
    StandardBuildingCode, "SBC", "Standard Building Code, 2114.3.10 (legacy code of the southern United States, a fragment seen)", Seen;
    /// Ontario.
    OntarioCode, "OBC", "Ontario Building Code, Part 9, fireplaces (public page of the article; its number recalled)", Seen;
    /// Germany.
    GermanFiringModel, "MFeuV", "Muster-Feuerungsverordnung, German model regulation on firing installations, 2007, section 4", Recalled;
    /// Warping torsion.
    Vlasov, "Vlasov", "V. Z. Vlasov, Thin-Walled Elastic Beams (English edition 1961), as in every textbook on open thin-walled bars", Recalled;
}

/// A part of a source: chapter, table, equation.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Clause {
    /// The publication.
    pub source: Source,
    /// Chapter, table or equation within it; empty for the whole.
    pub part: &'static str,
}

impl Clause {
    /// The clause `part` of `source`.
    pub const fn new(source: Source, part: &'static str) -> Self {
        Self { source, part }
    }
}

impl fmt::Display for Clause {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.source.id())?;
        if self.part.is_empty() { Ok(()) } else { write!(f, ", {}", self.part) }
    }
}

#[cfg(feature = "json")]
impl serde::Serialize for Clause {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

#[cfg(feature = "json")]
impl schemars::JsonSchema for Clause {
    fn inline_schema() -> bool {
        true
    }
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Clause".into()
    }
    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        String::json_schema(generator)
    }
}
