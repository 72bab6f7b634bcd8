//! What people commonly write and what they mean by it: lines typed one after the other, and the actions of the
//! last; and lines that only look alike.

/// Lines, split at "|", and the actions of the last.
pub(super) const MEANT: &[(&str, &str)] = &[
    // Renewing.
    ("Change the fan.", "remove fan · fit fan new"),
    ("Exchange the flow sensor.", "remove flow-sensor · fit flow-sensor new"),
    ("Swap the fan.", "remove fan · fit fan new"),
    ("Swap out the fan.", "remove fan · fit fan new"),
    ("Take out the fan.|Change the fan.", "fit fan new"),
    ("Take out the fan.|Swap the fan.", "fit fan new"),
    ("Take off the cover.|Replace the cover.", "fit cover"),
    ("Close the gas cock.|Undo the gas union.|Replace the washer.", "make gas-union seal=new"),
    ("Close the gas cock.|Undo the gas union.|Renew the fibre washer.", "make gas-union seal=new"),
    (
        "Close the gas cock.|Undo the gas union.|Change the washer and tighten the union to 20 Nm.",
        "make gas-union seal=new torque=20",
    ),
    (
        "Close the gas cock.|Undo the gas union.|Make the gas union.|Change the washer.",
        "undo gas-union · make gas-union seal=new",
    ),
    (
        "Close the heating valve.|Undo the union of the pump, G 1.|Undo the union of the heater, G 1.|Renew the washer of the pump.",
        "make pump-union seal=new",
    ),
];

/// Lines, split at "|", of which the last says nothing to do.
pub(super) const NOT_MEANT: &[&str] = &[
    "Do not change the fan.",
    "Never swap the fan.",
    "Take out the fan.|Do not replace the fan.",
    "Swap places with the second fitter.",
    "Change over to the other cylinder.",
    "It is normal that the fan is replaced after ten years.",
    "Close the gas cock.|Undo the gas union.|Do not replace the washer.",
    "Change the oil.",
];
