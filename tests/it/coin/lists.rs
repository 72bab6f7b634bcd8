//! Lists: of owners, behind "then", and of what a verb with its particle acts on. Nothing of them is lost.

/// Lines, split at "|", and what the last one says.
pub(super) const TOLD: &[(&str, &str)] = &[
    // Of three owners or more, with a comma and without an article.
    (
        "Disconnect the plugs of the fan, the pump and the diverter valve motor.",
        "undo fan-plug pump-plug diverter-valve-motor-plug",
    ),
    ("Pull the plugs of the fan, pump and ignition unit.", "undo fan-plug pump-plug ignition-unit-plug"),
    ("Undo the screws of the fan, the pump and the lid.", "undo fan-screws pump-screws lid-screws"),
    (
        "Undo the screws of the fan.|Undo the screws of the pump.|Undo the screws of the lid.\
         |Tighten the screws of the fan, the pump and the lid.",
        "make fan-screws pump-screws lid-screws",
    ),
    ("Disconnect the lead of the fan, the plug of the pump.", "undo fan-lead pump-plug"),
    // What is shut: one each where sides or media tell them apart, otherwise those of each.
    ("Shut the gas cocks of boiler 1 and boiler 2.", "isolate boiler-1-gas-cock boiler-2-gas-cock"),
    (
        "Shut the heating flow valves of boiler 1 and boiler 2.",
        "isolate boiler-1-heating-flow-valve boiler-2-heating-flow-valve",
    ),
    ("Switch off the breakers of the fan and the pump.", "isolate fan-breaker pump-breaker"),
    (
        "Shut the valves of the heating pump and the circulation pump.",
        "isolate heating-pump-valve-1 heating-pump-valve-2 circulation-pump-valve-1 circulation-pump-valve-2",
    ),
    (
        "Close the heating valve.|Open the vents of the left radiator and the right radiator.",
        "undo left-radiator-vent right-radiator-vent",
    ),
    // Behind "then", also where the verb has ended.
    ("Take the lid off, then the fan.", "remove lid fan"),
    ("Take the left cover off, then the right one.", "remove left-cover right-cover"),
    (
        "Lift the three-way valve motor off its body, then the mixer motor.",
        "remove three-way-valve-motor mixer-motor",
    ),
    ("Turn off the gas cock, and after that the flow valve.", "isolate gas-cock flow-valve"),
    ("Shut the gas cock, followed by the cold water valve.", "isolate gas-cock cold-water-valve"),
    (
        "Shut the gas cock, and after that the flow valve, and after that the return valve.",
        "isolate gas-cock flow-valve return-valve",
    ),
    ("Stop the boiler, after that the pump runs on.", "shutdown"),
    // What holds a part of one word, where it is put back.
    (
        "Undo the screws of the lid and the screws of the box.|Tighten the screws that hold the lid.",
        "make lid-screws",
    ),
    // What a thing is for, within its name.
    ("Slacken the lock nut and the pressure adjusting screw.", "slacken lock-nut pressure-adjusting-screw"),
    ("Take out the cylinder charging pump.", "remove cylinder-charging-pump"),
    ("Close the brine flow and return cocks.", "isolate brine-flow-cock return-cock"),
    ("Lift the heat exchanger out by its strap.", "remove heat-exchanger"),
    // "That of": the noun once more.
    ("Pull the plug of the motor and that of the fan.", "undo motor-plug fan-plug"),
    (
        "Disconnect the plug of the supply fan and then that of the extract fan.",
        "undo supply-fan-plug extract-fan-plug",
    ),
    ("Undo the clip of the left hose and that of the right hose.", "undo left-hose-clip right-hose-clip"),
    // What is shut too, and not whose the first is; and each with its own medium.
    (
        "Close the cold water stopcock of the cylinder and the heating flow valve.",
        "isolate cylinder-cold-water-stopcock heating-flow-valve",
    ),
    (
        "Close the stopcock of the cylinder and also the flow valve of the boiler.",
        "isolate cylinder-stopcock flow-valve",
    ),
    // Two of one pump, then two of another.
    (
        "Close the heating valve.\
         |Unscrew the vent plug and the drain plug of pump A, then unscrew the vent plug and the drain plug of pump B.",
        "undo pump-A-vent-plug pump-A-drain-plug · undo pump-B-vent-plug pump-B-drain-plug",
    ),
    // Whose it is, stands before a colon, or is what was acted on.
    (
        "Close the heating valve.|Heating pump: shut its two valves.|Charging pump: shut its two valves.",
        "isolate charging-pump-valve-1 charging-pump-valve-2",
    ),
    ("The fan: undo its two screws.", "undo fan-screws"),
    (
        "Switch off the boiler.|Switch off the upper heater at its spur and the lower heater at its spur.",
        "isolate upper-heater-spur lower-heater-spur",
    ),
    ("Refit the left cover.|Open the isolator for pump 1.", "isolate isolator"),
    // "After that" is no condition.
    (
        "After that take off the cover of the control box, which is held by a clip.",
        "remove control-box-cover",
    ),
    ("Once this is done carefully take off the cover.", "remove cover"),
    // Without a verb.
    ("Gas valve out.", "remove gas-valve"),
    ("Heater out.", "remove heater"),
    ("Immersion out.", "remove immersion"),
    ("Heating pump out.|Charging pump out.", "remove charging-pump"),
    // What is sprayed with cleaner is washed; what is sprayed for leaks is a joint.
    ("Spray the coil with coil cleaner.", "clean coil"),
    ("Spray the burner with water.", "clean burner"),
    ("Spray the joints with leak spray.", "test leak-fluid"),
    // What was never off is not put back, and "it" is not several.
    ("Lift the safety valve on the vessel by its cap, let it blow briefly.", ""),
    ("Latch the manual lever of the zone valve in the open position.", ""),
    ("Take off the lever.|Latch the lever onto its pin.", "fit lever"),
    ("Wipe the compartments out with a cloth.|Rinse it.", ""),
    ("Take out the lens.|Refit it.", "fit lens"),
    ("Take off the transformer.|Base under the transformer scraped to bare metal.", ""),
    // The gas of a vessel, and not the water beside it.
    ("Close the heating valve.|Pump the new vessel up to 0.75 to 0.8 bar.", ""),
    // Whether a part switches, says nothing of the earth.
    ("Switch off at the wall switch.|Test the overheat thermostat for continuity when it is cold.", ""),
    ("Test the earth continuity of the thermostat.", "test earth-continuity"),
    // "Both": two, and no others.
    (
        "Unplug the drain pump and the wash pump.|Twist the drain pump out of the sump.\
         |Push the pump back in until it clicks, then plug both in.",
        "fit drain-pump · make drain-pump-plug wash-pump-plug",
    ),
    (
        "Shut the flow isolator and the return isolator.|Swap the pressure sensor.|Open both.",
        "restore flow-isolator return-isolator",
    ),
    // Each on what it sits on, and where it goes back on.
    (
        "Slacken the M8 screws on the volute, the M6 screws on the terminal box and the M8 screws on the foot.",
        "slacken volute-screws terminal-box-screws foot-screws",
    ),
    (
        "Disconnect the suction hose and the return hose from the oil pump.|Connect the suction hose to port S.",
        "make oil-pump-suction-hose",
    ),
    // Along, and not into place.
    ("Close the heating valve.|Slacken the gland nuts and slide the gland back.", "slacken gland-nuts"),
    // As it is written on boards and valves.
    ("Unplug X1.", "undo X1-plug"),
    ("Close the cold water valve.|Unscrew the T&P valve.", "undo T-P-valve-thread"),
    (
        "Shut the flow isolator and the return isolator.|Open the left door and the right door.|Close both doors.\
         |Open both.",
        "aside left-door right-door",
    ),
    ("Switch off at the wall isolator.|Close the gas cock.|Take off the cover.|Open both.", ""),
    // What is known is meant, whatever stands before a colon.
    (
        "Close the meter gas cock and lock it.|Burner: take off its cover and open the gas cock.",
        "remove burner-cover · restore meter-gas-cock",
    ),
    ("Switch off the boiler isolator.|Fan: switch on the isolator.", "restore boiler-isolator"),
    // Where a valve sits, is not shut.
    ("Close the gas cock between the meter and the gas valve.", "isolate gas-cock"),
    // What is switched as often as it is taken off; what is turned.
    ("Blower off at the isolator.", ""),
    ("Controller off, wait 2 minutes, controller on.", "wait 2"),
    ("Lockshield valve out 2 turns.", ""),
    ("Lockshield valve in, count the turns.", ""),
    // A supply lead is no supply.
    ("Disconnect the supply lead of the pump.", "undo pump-supply-lead"),
    ("After this is done close the gas cock.", "isolate gas-cock"),
    ("Test the continuity of the cover to the frame.", "test earth-continuity"),
    ("Close the gas cock.|Undo the union.|Make the union.|Spray it.", "test leak-fluid"),
    ("Spray the flare joint with water and watch for bubbles.", "test leak-fluid"),
    ("CLOSE GAS COCK&FLOW VALVE.", "isolate gas-cock flow-valve"),
    ("Close the flow valve of the domestic hot water.|Close the return valve.", "isolate return-valve"),
    (
        "Disconnect the suction hose and the return hose from the oil pump.\
         |Connect the return hose to port R and the suction hose to port S.",
        "make oil-pump-return-hose oil-pump-suction-hose",
    ),
    // What is in already is not put back.
    ("Take the meter out.|Fit a new battery to the meter and refit it.", "fit battery new · fit meter"),
    // A side by another word.
    ("Take off the upper cover and the lower cover.|Refit the top cover.", "fit upper-cover"),
    ("Remove the rear panel and the side panel.|Refit the back panel.", "fit rear-panel"),
    ("Take off the top cover and the upper lid.|Refit the upper cover.", "fit top-cover"),
    // Verbs.
    ("Unbolt the fan guard and the inspection cover.", "remove fan-guard inspection-cover"),
    ("Dismantle the pressure reducer.", "remove pressure-reducer"),
    ("Undo the four screws.|Drive the screws back in.", "make screws"),
];

/// Lines, split at "|", of which the last only seems to say something.
pub(super) const NOTHING: &[&str] = &[
    "Two dirt traps sit in the return, one ahead of the heat pump and one ahead of the buffer.",
    "Set the switches on the new board.",
    "Do the same on the cylinder charging pump.",
];
