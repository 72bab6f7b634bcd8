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
    // Supplies, and what is switched.
    ("Close the gas cock.|Open the gas cock.|Turn off the gas.", "isolate gas-cock"),
    ("Close the gas cock.|Open the gas cock.|Shut the gas off.", "isolate gas-cock"),
    ("Close the gas cock.|Turn the gas back on.", "restore gas-cock"),
    ("Close the cold water stop tap.|Open the stop tap.|Shut the water off.", "isolate cold-water-stop-tap"),
    (
        "Switch off at the wall switch.|Switch on at the wall switch.|Turn off the power.",
        "isolate wall-switch",
    ),
    (
        "Close the gas cock.|Open the gas cock.|Turn off the gas and lock it.",
        "isolate gas-cock · lock gas-cock",
    ),
    ("Switch off the heater.", "shutdown"),
    ("Turn the compressor off.", "shutdown"),
    // Locks.
    ("Switch off at the wall isolator.|Fit the padlock.", "lock wall-isolator"),
    (
        "Switch off at the wall isolator, fit the padlock and keep the key.",
        "shutdown · isolate wall-isolator · lock wall-isolator",
    ),
    ("Shut the gas cock and put the locking clamp on its handle.", "isolate gas-cock · lock gas-cock"),
    (
        "Close the flow valve and the return valve and fit the locks.",
        "isolate flow-valve return-valve · lock flow-valve return-valve",
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
    "Switch off the light.",
    "Turn on the lamp.",
    "Turn off the gas.",
    "Turn off the radio.",
    "Unplug the fan.|Turn off the gas.",
    "Close the gas cock.|Shut the water off.",
    "Do not turn off the gas.",
    "Close the gas cock.|Never turn on the gas.",
    "Fit the padlock.",
    "Close the gas cock.|Open the gas cock.|Fit the padlock.",
    "Switch off at the wall switch.|Do not fit the padlock yet.",
];
