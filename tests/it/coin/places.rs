//! Where things are tells two of one noun apart; and a word that stands for what was named before is that, or nothing.

/// Lines, split at "|", and what the last one says.
pub(super) const TOLD: &[(&str, &str)] = &[
    // Whose they are, before where they come off.
    ("Pull the plugs of the fan and the pump off the board.", "undo fan-plug pump-plug"),
    (
        "Pull the plugs of the supply air sensor and the exhaust air sensor off the control board.",
        "undo supply-air-sensor-plug exhaust-air-sensor-plug",
    ),
    ("Take the screws out of the case and the lid off.", "undo case-screws · remove lid"),
    (
        "Slacken the lock nuts on the high pressure switch and the low pressure switch.",
        "slacken high-pressure-switch-lock-nuts low-pressure-switch-lock-nuts",
    ),
    ("Undo the two bolts of the fan and the four of the pump.", "undo fan-bolts pump-bolts"),
    (
        "Open the lid of the neutraliser and the lid of the condensate lift pump.",
        "aside neutraliser-lid condensate-lift-pump-lid",
    ),
    ("Take down the door of oven 1 and the door of oven 2.", "remove oven-1-door oven-2-door"),
    ("Remove the cam 1 and the cam 2.|Refit cam 1.", "fit cam-1"),
    (
        "Close the gas cock.|Unscrew the nozzle of stage one and the nozzle of stage two.",
        "undo stage-one-nozzle-thread stage-two-nozzle-thread",
    ),
    (
        "Undo the two screws of the lid and the two screws of the guard.|Tighten the four screws.",
        "make lid-screws guard-screws",
    ),
    // At which place they are.
    (
        "Slacken the clamp at the flue elbow and the one at the roof bend.",
        "slacken flue-elbow-clamp roof-bend-clamp",
    ),
    (
        "Close the heating valve.|Open the drain cock on the left and the one on the right.",
        "undo left-drain-cock right-drain-cock",
    ),
    (
        "Close the heating valve.|Open the air vent on the cylinder and the air vent on the boiler.",
        "undo cylinder-air-vent boiler-air-vent",
    ),
    (
        "Close the valve before the oil filter and then the valve behind it.",
        "isolate valve-before-the-oil-filter valve-after-the-oil-filter",
    ),
    (
        "Shut the stop valve ahead of the water meter and the stop valve after it.",
        "isolate stop-valve-before-the-water-meter stop-valve-after-the-water-meter",
    ),
    (
        "Shut the two valves at the pump.|Shut the two valves at the plate heat exchanger.",
        "isolate plate-heat-exchanger-valve-1 plate-heat-exchanger-valve-2",
    ),
    (
        "Close the cold water valve above the softener and the valve below it.",
        "isolate cold-water-valve-above-the-softener valve-below-the-softener",
    ),
    (
        "Close the cold water valve above the softener and the valve below it.|Open the upper valve.",
        "restore cold-water-valve-above-the-softener",
    ),
    (
        "Close the shut-off valves of the heating coil.|Close the shut-off valves of the cooling coil too.",
        "isolate cooling-coil-shut-off-valve-1 cooling-coil-shut-off-valve-2",
    ),
    (
        "Close the flow cock, the return cock and the cock of the filling loop.",
        "isolate flow-cock return-cock filling-loop-cock",
    ),
    ("Unplug fan 1 and fan 2 of the outdoor unit.", "undo outdoor-unit-fan-1-plug outdoor-unit-fan-2-plug"),
    (
        "Unplug the actuators of the kitchen loop, the bath loop and the hall loop.",
        "undo kitchen-loop-actuator-plug bath-loop-actuator-plug hall-loop-actuator-plug",
    ),
    (
        "Unplug the solenoid valve of the liquid line and the solenoid valve of the hot gas bypass.",
        "undo liquid-line-solenoid-valve-plug hot-gas-bypass-solenoid-valve-plug",
    ),
    (
        "Take the cover off the room controller.|Take the lid off the terminal box.|Snap the cover back on.",
        "fit room-controller-cover",
    ),
    (
        "Close the gas cock.|Undo the union at the inlet and the union at the outlet of the solenoid valve.",
        "undo inlet-union outlet-union",
    ),
    (
        "Take the cover off the fan and slacken the clamp at the elbow and the one at the bend.",
        "remove fan-cover · slacken elbow-clamp bend-clamp",
    ),
    // What stands for a thing.
    (
        "Take off the front cover and the rear cover.|Refit the front cover.|Put the remaining cover back.",
        "fit rear-cover",
    ),
    ("Take off the front cover and the lid.|Put the remaining cover back.", "fit front-cover"),
    ("Take out the fan.|Put the replacement fan in.", "fit fan new"),
    ("Remove the board.|Fit the replacement.", "fit board new"),
    ("Take out the fan and fit a new one.", "remove fan · fit fan new"),
    ("Take out the capacitor and fit one of the same rating.", "remove capacitor · fit capacitor new"),
    (
        "Open the front cover and take out the filters. Wash them.",
        "aside front-cover · remove filters · clean filters",
    ),
    ("Unclip the flow sensor and the return sensor.|Clean them.", "clean flow-sensor return-sensor"),
    // What only looks like a verb or an owner.
    ("Take the ribbon cable off as well.", "undo ribbon-cable"),
    ("Swing the burner out.|Swing the burner in.", "fit burner"),
    ("Put the hood back, otherwise you start again.", "fit hood"),
    ("Remove the run capacitor.", "remove run-capacitor"),
    ("Wash the coil from the downstream side.", "clean coil"),
    ("Unclip the sensor.|Undo the hose clip and clean it.", "undo hose-clip · clean hose-clip"),
    ("Take out the bellows and clean it.", "remove bellows · clean bellows"),
    ("Hose down the heat exchanger.", "clean heat-exchanger"),
    (
        "Take out the supply fan and the exhaust fan.|Renew its bearings and put it back.",
        "remove bearings · fit bearings new",
    ),
    ("Close the gas cock.|Take the strainer cap off, pull the mesh, wash it.", "undo strainer-cap"),
];

/// Lines, split at "|", of which the last only seems to say something.
pub(super) const NOTHING: &[&str] = &[
    "Put pump A on hand and pump B on off.",
    "Let it down to the stop level.",
    "Close the gas cock.|With the gas valve off, look at the burner.",
    "Close the heating valve.|Close the valve in front of the pump.",
    "Stop pump one, pump two and pump three at the panel.|Start the other one.",
    "Turn off the cold feed to the cylinder.",
    "Take the cover off the room controller.|Take the cover off the ventilation unit.",
    "Leave the heating flow sensor clipped on the pipe.",
    "Take out the fan and the pump.|Put in a new one.",
    "Take out the supply filter and the extract filter.|Put in a new one on the supply side.",
    "Take off the front cover.|Refit the front cover.|Put the remaining cover back.",
    "Crack the high pressure switch off its tee and screw on the new one.",
];
