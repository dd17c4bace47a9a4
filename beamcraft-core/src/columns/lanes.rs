//! Lanes: a few calculations that are asked for by the million compute many rows side by side.
//!
//! Such a calculation is written without branches, so that the compiler turns a loop over rows into vector instructions.
//! The very same function serves the single call: the bits are the same because there is no second formula. Rows that are
//! not admitted are computed along with the others, thrown away, and then refused by the single call.

pub(crate) use pulp::NullaryFnOnce;

use super::chunk::{Chunk, Column, ColumnMut};
use crate::error::Fault;

/// Rows of a block: its columns stay in the fastest cache.
pub(crate) const LANES: usize = 64;

/// What a field of a struct is inside a column.
pub(crate) trait LaneValue: Copy {
    /// Number or code.
    type Raw: Raw;

    /// The field of a value in a column; of a code that stands for none of the choices any of them.
    fn of_raw(raw: Self::Raw) -> Self;

    /// The field as it stands in a column.
    fn to_raw(self) -> Self::Raw;

    /// Whether a code stands for one of the choices.
    #[inline(always)]
    fn is_known(_: Self::Raw) -> bool {
        true
    }
}

impl LaneValue for f64 {
    type Raw = f64;

    #[inline(always)]
    fn of_raw(raw: f64) -> Self {
        raw
    }

    #[inline(always)]
    fn to_raw(self) -> f64 {
        self
    }
}

impl LaneValue for Option<f64> {
    type Raw = f64;

    #[inline(always)]
    fn of_raw(raw: f64) -> Self {
        if raw.is_nan() { None } else { Some(raw) }
    }

    #[inline(always)]
    fn to_raw(self) -> f64 {
        self.unwrap_or(f64::NAN)
    }
}

/// Lets a choice stand in lanes: `lane_choice!(Direction { SideGrain, EndGrain });`, every variant in its order.
macro_rules! lane_choice {
    ($type:ty { $first:ident $(, $variant:ident)* $(,)? }) => {
        impl $crate::columns::LaneValue for $type {
            type Raw = u32;

            #[inline(always)]
            fn of_raw(raw: u32) -> Self {
                match raw {
                    $(code if code == Self::$variant as u32 => Self::$variant,)*
                    _ => Self::$first,
                }
            }

            #[inline(always)]
            fn to_raw(self) -> u32 {
                self as u32
            }

            #[inline(always)]
            fn is_known(raw: u32) -> bool {
                (raw == Self::$first as u32) $(| (raw == Self::$variant as u32))*
            }
        }
    };
}
pub(crate) use lane_choice;

/// What a column holds.
pub(crate) trait Raw: Copy {
    /// Before anything is written.
    const ZERO: Self;
    /// The values of a column of this kind.
    fn of_column<'a>(column: &Column<'a>) -> Option<&'a [Self]>;
    /// The places of a column of this kind.
    fn of_place<'p>(place: &'p mut ColumnMut<'_>) -> Option<&'p mut [Self]>;
}

impl Raw for f64 {
    const ZERO: Self = 0.0;

    fn of_column<'a>(column: &Column<'a>) -> Option<&'a [Self]> {
        if let Column::Numbers(values) = column { Some(values) } else { None }
    }

    fn of_place<'p>(place: &'p mut ColumnMut<'_>) -> Option<&'p mut [Self]> {
        if let ColumnMut::Numbers(values) = place { Some(values) } else { None }
    }
}

impl Raw for u32 {
    const ZERO: Self = 0;

    fn of_column<'a>(column: &Column<'a>) -> Option<&'a [Self]> {
        if let Column::Codes(values) = column { Some(values) } else { None }
    }

    fn of_place<'p>(place: &'p mut ColumnMut<'_>) -> Option<&'p mut [Self]> {
        if let ColumnMut::Codes(values) = place { Some(values) } else { None }
    }
}

impl<'a> Chunk<'a> {
    /// The values of an input field for the lanes of a block: where they lie if there are enough of them, else put
    /// together in `spare`. A field that is left out has its value of `default`; lanes beyond the end repeat the first.
    #[inline]
    pub(crate) fn lanes<'s, T: LaneValue>(
        &self,
        place: usize,
        block: usize,
        default: Option<T>,
        spare: &'s mut [T::Raw; LANES],
    ) -> &'s [T::Raw; LANES]
    where
        'a: 's,
    {
        let values = self.inputs.get(place).and_then(|column| T::Raw::of_column(column.as_ref()?));
        match (values, default) {
            (Some([only]), _) => spare.fill(*only),
            (Some(values), _) => {
                let rest = values.get(self.start + block..).unwrap_or_default();
                if let Some(whole) = rest.first_chunk() {
                    return whole;
                }
                if let Some(first) = rest.first() {
                    spare.fill(*first);
                }
                spare.iter_mut().zip(rest).for_each(|(lane, value)| *lane = *value);
            }
            (None, Some(value)) => spare.fill(value.to_raw()),
            (None, None) => {}
        }
        spare
    }

    /// Writes the lanes of a block into an output field, if it is wanted.
    #[inline(always)]
    pub(crate) fn write_lanes<R: Raw>(&mut self, place: usize, block: usize, lanes: &[R; LANES]) {
        let Some(Some(column)) = self.outputs.get_mut(place) else { return };
        let rest = R::of_place(column).and_then(|values| values.get_mut(block..)).unwrap_or_default();
        if let Some(whole) = rest.first_chunk_mut::<LANES>() {
            *whole = *lanes;
        } else {
            rest.iter_mut().zip(lanes).for_each(|(place, value)| *place = *value);
        }
    }

    /// Starts of the blocks.
    pub(crate) fn blocks(&self) -> core::iter::StepBy<core::ops::Range<usize>> {
        (0..self.rows).step_by(LANES)
    }

    /// Whether a field has a column or one value for all rows.
    pub(crate) fn is_given(&self, place: usize) -> bool {
        matches!(self.inputs.get(place), Some(Some(_)))
    }

    /// Puts the rows of a block that are not admitted through the single call, which refuses them or knows better.
    pub(crate) fn single_calls<I: serde::de::DeserializeOwned, O: serde::Serialize>(
        &mut self,
        block: usize,
        strange: &[u64; LANES],
        compute: fn(&I) -> Result<O, Fault>,
    ) {
        if strange.iter().fold(0, |any, lane| any | lane) == 0 {
            return;
        }
        for (row, lane) in (block..self.rows).zip(strange) {
            if *lane != 0 {
                self.row(row, compute);
            }
        }
    }
}

/// Runs the loop over the blocks of a chunk with the widest vector instructions that the machine has. They round as the
/// narrow ones do, and nothing is fused: the bits stay the same.
#[inline]
pub(crate) fn widest<Op: NullaryFnOnce>(blocks: Op) -> Op::Output {
    pulp::Arch::new().dispatch(blocks)
}

/// Defines the function that works a chunk off in lanes:
///
/// ```text
/// lanes!(fn name for single_call: Input { every: f64, field: Option<f64> } => Output { every: f64, field: Choice },
///        admits = is_good, lane = compute);
/// ```
/// Fields stand in the order of the structs. `is_good` says whether the single call would give the result of `compute`;
/// both take the input, have no branch and are `#[inline(always)]`, without which a loop is not vectorised. No field of the
/// input has the name of one of the output.
macro_rules! lanes {
    (
        $(#[$doc:meta])*
        $visible:vis fn $name:ident for $single:ident: $input:ident { $($field:ident: $type:ty),+ $(,)? }
            => $output:ident { $($result:ident: $result_type:ty),+ $(,)? },
        admits = $admits:path, lane = $lane:path $(,)?
    ) => {
        $(#[$doc])*
        $visible fn $name(chunk: &mut $crate::columns::Chunk<'_>) {
            use $crate::columns::{Chunk, LANES, LaneValue, NullaryFnOnce, Raw, rows, widest};

            /// Places of the fields.
            #[allow(non_camel_case_types, clippy::upper_case_acronyms, reason = "named as the fields are")]
            enum Place { $($field),+ }
            #[allow(non_camel_case_types, clippy::upper_case_acronyms, reason = "named as the fields are")]
            enum ResultPlace { $($result),+ }

            /// One block. A function, so that the compiler knows of every array that it is apart from the others.
            #[inline(always)]
            #[allow(clippy::indexing_slicing, reason = "k stays below the length, which the compiler sees")]
            #[allow(clippy::too_many_arguments, reason = "an array for each field")]
            fn compute(
                $($field: &[<$type as LaneValue>::Raw; LANES],)+
                strange: &mut [u64; LANES],
                $($result: &mut [<$result_type as LaneValue>::Raw; LANES]),+
            ) {
                for k in 0..LANES {
                    let input = $input { $($field: <$type as LaneValue>::of_raw($field[k])),+ };
                    let is_known = true $(& <$type as LaneValue>::is_known($field[k]))+;
                    strange[k] = u64::from(!(is_known & $admits(&input)));
                    let output: $output = $lane(&input);
                    $($result[k] = <$result_type as LaneValue>::to_raw(output.$result);)+
                }
            }

            /// The loop over blocks; a type, because a closure is not inlined where the wide instructions are.
            struct Blocks<'c, 'a> {
                chunk: &'c mut Chunk<'a>,
                default: Option<$input>,
            }

            impl NullaryFnOnce for Blocks<'_, '_> {
                type Output = ();

                #[inline(always)]
                fn call(self) {
                    let Self { chunk, default } = self;
                    $(let mut $field = [<<$type as LaneValue>::Raw as Raw>::ZERO; LANES];)+
                    for block in chunk.blocks() {
                        let mut strange = [0_u64; LANES];
                        $(let mut $result = [<<$result_type as LaneValue>::Raw as Raw>::ZERO; LANES];)+
                        compute(
                            $(chunk.lanes::<$type>(
                                Place::$field as usize, block, default.map(|input| input.$field), &mut $field,
                            ),)+
                            &mut strange,
                            $(&mut $result),+
                        );
                        $(chunk.write_lanes(ResultPlace::$result as usize, block, &$result);)+
                        chunk.single_calls::<$input, $output>(block, &strange, $single);
                    }
                }
            }

            let all_given = true $(&& chunk.is_given(Place::$field as usize))+;
            let default = if all_given { None } else { chunk.default_of::<$input>() };
            if !all_given && default.is_none() {
                return rows::<$input, $output>(chunk, $single);
            }
            chunk.begin();
            widest(Blocks { chunk, default });
        }
    };
}
pub(crate) use lanes;
