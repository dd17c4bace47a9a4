//! From the plan to the yard and the calendar: what to buy, what it costs, and in which order the work is done.

mod lumber;
mod order;
mod seams;
mod shopping;

pub use lumber::LumberNeed;
pub use order::{OrderOfWork, OrderOfWorkInput, WorkHours, order_of_work};
pub use seams::ClampsAtHand;
pub use shopping::{BuyingSpec, LinePrice, ShoppingLine, ShoppingList, ShoppingListInput, shopping_list};

use crate::error::{Detail, Error};
use crate::plan::{BeamSpec, Plan, plan};

/// The plan of a spec; its faults come together with those already found.
fn planned(spec: &BeamSpec, mut faults: Vec<Detail>) -> Result<Plan, Error> {
    let planned = plan(spec).map_err(|error| error.within("spec"));
    if let Err(error) = &planned {
        faults.extend(error.details().iter().cloned());
    }
    Error::unless_empty(faults)?;
    planned
}

/// Registry rows of this module.
#[cfg(feature = "json")]
pub(crate) const CALCULATIONS: &[crate::json::Calculation] = &[shopping::SHOPPING_LIST, order::ORDER_OF_WORK];
