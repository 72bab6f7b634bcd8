//! Quantities as people write them: a figure exactly as typed, with its unit.
//!
//! Nothing here rounds or converts what was typed; conversion happens only where a
//! calculation or a comparison needs it ([`convert`]). NaN and infinities cannot enter a [`Figure`].
//! What a value carries beside that stays with it ([`Rest`]).

mod convert;
mod figure;
mod range;
mod rest;
mod unit;

pub use convert::{ConvertError, convert};
pub use figure::{Figure, FigureError, may_be_thousands};
pub use range::{Measured, Range};
pub use rest::Rest;
pub use unit::{Quantity, Unit};
