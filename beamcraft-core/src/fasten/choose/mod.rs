//! Choosing screws: which one, how long, how many, and how an angled pocket screw lies.

mod count;
mod length;
mod pocket;
mod screw;

pub use count::{ScrewCount, ScrewCountInput, screw_count};
pub use length::{ScrewLength, ScrewLengthInput, screw_length};
pub use pocket::{PocketMate, PocketScrew, PocketScrewInput, pocket_screw};
pub use screw::{
    ChooseScrewInput, ScrewChoice, ScrewChoiceList, ScrewHoles, ScrewRefusal, ScrewShortcoming, ShortcomingKind,
    choose_screw,
};

#[cfg(feature = "json")]
pub(super) use {count::SCREW_COUNT, length::SCREW_LENGTH, pocket::POCKET_SCREW, screw::CHOOSE_SCREW};
