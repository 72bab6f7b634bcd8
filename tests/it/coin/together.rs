//! Things that one sentence names together, in whatever way, and what belongs to a thing that the words have named: each is
//! meant, and no other.

/// Lines, split at "|", and what the last one says.
pub(super) const TOGETHER: &[(&str, &str)] = &[
    // Words that join like "and".
    ("Remove the burner followed by the fan.", "remove burner fan"),
    ("Disconnect the ignition lead plus the ionisation lead.", "undo ignition-lead ionisation-lead"),
    ("Unplug the burner fan as well as the circulation pump.", "undo burner-fan-plug circulation-pump-plug"),
    ("Remove the fan and also the pump.", "remove fan pump"),
    ("Remove the fan, pump and board.", "remove fan pump board"),
    ("Take out the fan, the pump and the board.|Refit board, fan and pump.", "fit board fan pump"),
    ("Close both the flow valve and the return valve.", "isolate flow-valve return-valve"),
    // Each with its own place or tool.
    ("Remove the fan from the housing and the pump from the bracket.", "remove fan pump"),
    ("Lift the fan out of the housing and the burner out of the boiler.", "remove fan burner"),
    ("Clean the filter with a brush and the grille with a cloth.", "clean filter grille"),
    ("Pull plug X1 off the board and plug X2 off the fan.", "undo board-plug-X1 · undo fan-plug-X2"),
    // Marks and sides.
    ("Unplug CN4, CN7 and CN11.", "undo CN4-plug CN7-plug CN11-plug"),
    ("Unplug the CN4 and CN11 connectors.", "undo cn4-connector cn11-connector"),
    ("Switch off breaker F1 and F2.|Switch on F2.", "restore breaker-F2"),
    ("Take off the left cover and the right one.", "remove left-cover right-cover"),
    ("Take off the supply and extract belts.", "remove supply-belt extract-belt"),
    ("Take off the left-hand cover.|Refit the left cover.", "fit left-cover"),
    ("Take the filter out and fit a new one.", "remove filter · fit filter new"),
    // Of several words, and what it came out of is not renewed.
    ("Take the air filter out of the housing and fit a new one.", "remove air-filter · fit air-filter new"),
    (
        "Lift the cartridge out of the body of the valve and fit a new one.",
        "remove cartridge · fit cartridge new",
    ),
    (
        "Unplug the control box from its base and fit a new one.",
        "undo control-box-plug · fit control-box new",
    ),
    ("Take out the two filters and fit new ones.", "remove filters · fit filters new"),
    // What is in its place is not refitted, and no thread is cleaned.
    (
        "Remove the pressure reducing valve, clean its strainer and refit it.",
        "remove pressure-reducing-valve · clean strainer · fit pressure-reducing-valve",
    ),
    (
        "Close the gas cock.|Unscrew the left electrode and the right electrode from the burner head.|Clean them.",
        "clean left-electrode right-electrode",
    ),
    // Names in which a verb stands, or what is measured.
    (
        "Take the expansion relief valve and the temperature relief valve off the cylinder.",
        "remove expansion-relief-valve temperature-relief-valve",
    ),
    ("Remove the hot check valve and the cold check valve.", "remove hot-check-valve cold-check-valve"),
    // What the step before took out.
    ("Remove the circulating pump.|Fit a new one.", "fit circulating-pump new"),
    ("Take out both filters.|Now fit new ones.", "fit filters new"),
    // Nobody has named the plug.
    ("Unplug the fan and replace it.", "undo fan-plug · remove fan · fit fan new"),
    // Locks, valves and switches.
    (
        "Switch off isolator 1 and isolator 2.|Put a lock on isolator 1 and on isolator 2.",
        "lock isolator-1 isolator-2",
    ),
    ("Isolate the fan at breaker F1 and the pump at breaker F2.", "isolate breaker-F1 breaker-F2"),
    (
        "Turn off both immersion heaters at their double-pole switches.",
        "shutdown · isolate double-pole-switch-1 double-pole-switch-2",
    ),
    (
        "Shut the isolating valve of the flow pipe.|Shut the isolating valve of the return pipe.",
        "isolate return-pipe-isolating-valve",
    ),
    // Of one of two, with what holds it, in two orders of one line.
    (
        "Remove the four bolts and lift off the motor of pump 1.|Remove the four bolts and lift off the motor of pump 2.",
        "undo pump-2-motor-bolts · remove pump-2-motor",
    ),
    (
        "Pull off plugs CN1, CN2 and CN3 from the inverter board.",
        "undo inverter-board-plug-CN1 inverter-board-plug-CN2 inverter-board-plug-CN3",
    ),
    (
        "Unplug the pump, the zone one actuator and the zone two actuator.",
        "undo pump-plug zone-one-actuator-plug zone-two-actuator-plug",
    ),
    // Where each is, or of which place.
    ("Undo the oil union on either side of the burner.", "undo burner-oil-unions"),
    (
        "Take the belt guard off the supply fan and off the extract fan.",
        "remove supply-fan-belt-guard extract-fan-belt-guard",
    ),
    ("Pull the plug off the fan and off the pump.|Push the plugs back on.", "make fan-plug pump-plug"),
    ("Remove the screw from the fan and from the pump.", "undo fan-screw pump-screw"),
    // Several that one verb reads.
    ("Measure its resistance and note the value.", "read reading=resistance"),
    (
        "Take the readings: nozzle pressure 780 to 860 Pa, motor current at most 4.3 A.",
        "read reading=\"nozzle pressure|780..860 Pa\" reading=\"motor current|..4.3 A\"",
    ),
    (
        "Check the flow temperature is 70 °C and the return temperature 50 °C.",
        "read reading=\"flow temperature|70 Cel\" reading=\"return temperature|50 Cel\"",
    ),
    (
        "Read the pressure gauge on the flow and the pressure gauge on the return.",
        "read reading=\"pressure gauge on the flow\" reading=\"pressure gauge on the return\"",
    ),
    (
        "Read the flow and return temperatures.",
        "read reading=\"flow temperature\" reading=\"return temperature\"",
    ),
    (
        "Measure the current of the fan and the pump.",
        "read reading=\"current of the fan\" reading=\"current of the pump\"",
    ),
    (
        "Check the oil pressure and temperature are right.",
        "read reading=\"oil pressure\" reading=temperature",
    ),
    (
        "Measure the resistance of the left coil and of the right coil.",
        "read reading=\"resistance of the left coil\" reading=\"resistance of the right coil\"",
    ),
    (
        "Close the gas valve before the meter and the gas valve after the meter.|Open the gas valve after the meter.",
        "restore gas-valve-after-the-meter",
    ),
    (
        "Close the isolating valve on the flow and the isolating valve on the return.|Open the flow valve.",
        "restore flow-isolating-valve",
    ),
    (
        "Close the oil valve at the tank and the oil valve at the burner.|Open the oil valve at the tank.",
        "restore tank-oil-valve",
    ),
    (
        "Take off the cover of the control box and the cover of the terminal box.|Refit the cover of the terminal box.",
        "fit terminal-box-cover",
    ),
    ("Take out the filter of the boiler and the filter of the tank.", "remove boiler-filter tank-filter"),
    (
        "Take out the drip trays of the left door and the right door.",
        "take left-door-drip-tray right-door-drip-tray",
    ),
    ("Remove the actuator of zone one.|Remove the actuator of zone two.", "remove zone-two-actuator"),
    (
        "Remove the pump of the underfloor circuit and the pump of the radiator circuit.",
        "remove underfloor-circuit-pump radiator-circuit-pump",
    ),
    (
        "Remove the strainer on the primary side.|Remove the strainer on the secondary side.",
        "remove secondary-side-strainer",
    ),
    ("Take the lid off the tank and take the lid off the bin.|Refit the lid of the bin.", "fit bin-lid"),
    // With what it is tightened to, and "it" that is no owner.
    (
        "Remove the pump with its four bolts.|Refit the pump with its bolts and torque to 25 Nm.",
        "fit pump · make pump-bolts torque=25",
    ),
    ("Undo the oil pipe and pull it out.", "undo oil-pipe"),
    // Of two that were named one by one.
    (
        "Unplug the left sensor.|Unplug the right sensor.|Plug the sensors in.",
        "make left-sensor-plug right-sensor-plug",
    ),
    (
        "Close the cold valve and the hot valve.|Pull the strainer out of the cold valve.|Pull the strainer out of the hot valve.|Put the strainers back.",
        "fit cold-valve-strainer hot-valve-strainer",
    ),
    // Whose it is, though that of another was touched last.
    (
        "Take off the cover of pump A.|Take off the cover of pump B.|Take out pump A.|Refit pump A with its cover.",
        "fit pump-A · fit pump-A-cover",
    ),
    (
        "Shut the left gas cock.|Shut the right gas cock.|Remove the left burner.|Refit the left burner and open its gas cock.",
        "fit left-burner · restore left-gas-cock",
    ),
    (
        "Undo the screws of the left cover.|Undo the screws of the right cover.|Remove the left cover.|Refit it with its screws.",
        "fit left-cover · make left-cover-screws",
    ),
    (
        "Unplug the left fan.|Unplug the right fan.|Take out the left fan.|Refit the left fan and push in the plug.",
        "fit left-fan · make left-fan-plug",
    ),
];

/// Lines, split at "|", and the supplies that the valves of the last one shut, in their order.
pub(super) const SUPPLIES: &[(&str, &[&str])] = &[
    ("Isolate the gas at the meter cock, the mains at the spur.", &["gas", "mains"]),
    ("Turn off the gas at the cock and the water at the stop valve.", &["gas", "domestic water"]),
    (
        "Close the cold water at the stopcock and the heating at the flow valve.",
        &["domestic water", "heating"],
    ),
];

/// Lines, split at "|", of which the last only seems to say something.
pub(super) const NOTHING: &[&str] = &[
    "Take out the fan.|Pressure switch tube taken off the supply fan.",
    "Valve head taken off the left radiator.",
    "Remove the left float.|Clean both floats.",
    "Take out filters 1, 2 and 3.|Clean these two.",
    "Remove all the filters except the right filter.",
    "Check the temperature and pressure relief valve.",
    "Check the low pressure switch and the high pressure switch.",
    "Clean the strainer of pump 1.|Do the same on pump 2.",
    "Remove the fan and the pump.|Fit a new one.",
    "Remove the pump.|Fit new ones.",
    "Open the left door and the right door.|Take out the shelf.|Put a cloth down.|Shut it.",
];
