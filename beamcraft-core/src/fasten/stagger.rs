//! How the fasteners of neighbouring lines stand to one another.

/// Whether the fasteners of a group stand on common lines or are shifted against one another.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum RowStagger {
    /// On common lines: they can split the wood together.
    InLine,
    /// Staggered. Eurocode 5: those of a row along the grain stand off its line by one diameter or more in turn. American
    /// standard: neighbouring rows are shifted against each other by half the spacing.
    Staggered,
}

impl RowStagger {
    /// On common lines, the careful reading where nothing is said.
    #[cfg(feature = "json")]
    pub(super) fn in_line() -> Self {
        Self::InLine
    }
}
