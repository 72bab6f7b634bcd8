//! Lines of the trade, one at a time: those before the last of each stand only for the state of things.
//!
//! Written in many voices before the recogniser was taught any of them. What the last line is expected to say is
//! written like `table`.

/// Lines, split at "|", and what the last of them says.
pub(super) const LINES: &[(&str, &str)] = &[
    // Gas.
    ("Turn the gas off at the meter.", "isolate"),
    ("Gas cock off, tag on.", "isolate place|lock"),
    (
        "Switch off the boiler.|Close the gas cock.|Slacken both M5s under the gas valve and drop it out.",
        "slacken|undo remove",
    ),
    (
        "Close the gas cock.|Undo the 3/4 union at the valve inlet with a 30 and fish out the washer.",
        "undo ?discard ?remove",
    ),
    (
        "Close the gas cock.|Undo the inlet union and the outlet union.|Make the inlet union with a new washer to 30 Nm, the outlet to 23.",
        "make make",
    ),
    (
        "Close the gas cock.|Crack the test nipple, gauge on, gas cock open a quarter.",
        "slacken|undo place restore",
    ),
    ("Working pressure 18 to 22 mbar with the burner flat out, not under 17 on hot water.", "read|test"),
    // Mains.
    ("Isolator off, lock on, key in your pocket.", "isolate lock"),
    ("MCB down and padlocked.", "isolate lock"),
    ("Switch off the fused spur.|Fuse out, and hang your tag on the spur.", "isolate|remove place|lock"),
    (
        "Knock off the MCB and the fused spur and lock them off.|Lock off, MCB up, spur back on.",
        "restore restore ?take ?start",
    ),
    ("Both spades off the stat, mark which is which.", "undo ?record"),
    (
        "Disconnect the earth, the brown and the blue.|Earth back on its stud first, then brown and blue, 1.2 Nm each.",
        "make ?make ?make",
    ),
    // Heating.
    ("Flow and return shut, drain cock open, hose in the bucket.", "isolate isolate undo|release ?place"),
    ("Both isolating valves on the pump round to off, slot across the pipe.", "isolate ?isolate"),
    ("Pump head off: four 5 mm Allen bolts, and have a tray under.", "undo remove ?place"),
    (
        "Undo the four bolts and take the pump head off.|New gasket on the head, offer it up, bolts in finger tight, then 8 Nm crosswise.",
        "fit make ?tighten",
    ),
    (
        "Close the flow and return valves.|Open the drain cock.|Drain cock shut, both valves open, loop on and fill to 1.3.",
        "make|isolate restore restore ?place|make charge",
    ),
    ("Bleed the rads starting at the bottom of the house, topping up as you go.", "release|purge ?charge"),
    ("She should sit at 1.2 cold and not move in ten minutes.", "?read|test"),
    // Hot and cold water.
    ("Stop tap off, kitchen cold open till it dies.", "isolate ?undo|release|restore ?wait"),
    ("Close the stop tap.|Hot tap open at the basin to break the vacuum.", "undo|release|restore"),
    ("Whip the filter bowl off with the strap wrench and tip it out.", "remove|undo ?release"),
    (
        "Take the filter bowl off.|Take the cartridge out.|New cartridge in, bowl back up hand tight, no tools.",
        "fit fit|make",
    ),
    (
        "Close the stop tap.|Stop tap back on a crack, let the air spit out of the tap, then right open.",
        "restore ?release|purge",
    ),
    ("The pressure relief valve lets by at 6 bar, so don't lean on it.", ""),
    // Refrigerant.
    (
        "Recover the charge into a bottle until the set pulls down to 0.3 bar absolute, then break the vacuum with nitrogen.",
        "release ?charge|purge",
    ),
    ("Gauges on, low side and high side.", "place ?place"),
    ("Pull a vacuum to below 1.5 mbar and hold it half an hour.", "release|test ?test|wait ?read"),
    ("Recover the charge.|Undo both flare nuts.|Both flare nuts to 55 Nm on a drop of oil.", "make"),
    // Oil.
    ("Oil off at the tank, fire valve left alone.", "isolate"),
    ("Shut the oil valve.|Hose off the pump, cap the end.", "undo|remove place"),
    ("Nozzle out with a 16, holder backed up with a 19.", "remove|undo"),
    ("Trim the air till the smoke's a one.", "set"),
    // Condensate.
    ("Trap down, rinse it, fill it and back up with a click.", "remove clean ?charge fit|make"),
    ("Pull the condensate pipe off the sump and plug the stub with a rag.", "undo|remove place"),
    // Flue and air.
    (
        "Flue clamp slack, turn the elbow out of the fan and park it on the floor.",
        "slacken|undo remove ?aside",
    ),
    ("Probe in, bung the hole behind it.", "place ?place"),
    (
        "Undo the two screws and lift the flue turret off.|Seal kit on the turret, turret down, both screws.",
        "fit make",
    ),
    // Cases, covers and what is told.
    ("Undo the four catches and take the cover off.|Cover on, close the four catches.", "fit make"),
    ("Front panel off: two screws at the bottom, then up and out.", "undo remove"),
    ("Sensor plug off, sensor out a quarter turn anticlockwise.", "undo remove|undo"),
    ("The burner lights after about ten seconds and the flame holds.", ""),
    ("He'll have turned the heating off already.", ""),
    ("Mind the ribbon cable, it tears if the door drops.", ""),
    ("Two catches at the top, then the door swings down.", "?undo ?aside"),
    ("Leave the isolators shut until the joints are made.", ""),
    ("With a 13 on the stud and a 10 on the nut, undo the strap.", "undo|remove ?remove"),
    ("Run the tap hot, 48 to 52 at the spout.", "start|read|test ?read|test"),
    ("Close the cold water valve.|Hang a tag on it.|Tag off, valve open.", "take restore"),
    ("No locks and no tags left behind, then hand over.", "finish"),
    (
        "Undo the six screws and take the cover off.|Six screws back in the cover, 1.5 Nm, no pinched wires.",
        "make ?fit",
    ),
];

/// More of them, written when those above were read, to see what had been learnt of the language and what of the lines.
pub(super) const MORE: &[(&str, &str)] = &[
    // Gas.
    ("Emergency control valve off at the meter box and a label on the handle.", "isolate ?place"),
    (
        "Shut the gas cock.|Undo the four T25s round the flange of the gas valve and lift it clear, catching the gasket.",
        "undo remove",
    ),
    (
        "Shut the gas cock.|Undo the gas union.|Nip the gas union up to 35 Nm with a new fibre washer, then gas back on.",
        "make restore",
    ),
    ("Spray up every joint you've had apart while the gas is on; no bubbles.", "test"),
    ("Let-by test first, 10 mbar for a minute, then tightness at 20.", "test ?test"),
    (
        "Shut the gas cock.|Open the test nipple.|Gauge off, nipple screw nipped up, soap it.",
        "?take make|tighten test",
    ),
    // Mains.
    (
        "Knock the boiler off at the switched spur, pull its fuse and pocket it.",
        "isolate ?shutdown ?isolate|remove ?lock",
    ),
    ("Isolate, lock off, prove dead.", "?isolate ?lock prove"),
    ("Wires out of the terminal strip one at a time, photo first.", "?photograph undo"),
    ("The element terminals stay live until the contactor drops.", ""),
    (
        "Switch off the fused spur.|Pull the fan plug off.|Fan plug back on, spur back on, and see that the fan runs.",
        "make restore test|inspect ?start",
    ),
    ("Meter the coil cold: 3.9 to 4.3 kohm.", "read|test"),
    // Heating.
    ("Shut both pump valves with a flat blade, a quarter turn each.", "isolate isolate"),
    ("Drop the pressure off the drain cock till the gauge sits on nought.", "release|undo ?prove|read"),
    ("Close the pump valves.|Undo both pump unions, 36 mm, and slide the pump out sideways.", "undo remove"),
    (
        "Close the pump valves.|Undo both pump unions.|Take the pump out.|New pump in with the arrow up, fresh washers both sides, unions hand tight then a quarter with the grips.",
        "fit make",
    ),
    (
        "Close the pump valves.|Valves open, bleed the pump, fill to 1.2.",
        "restore restore release|purge charge",
    ),
    ("Auto vent cap a turn open while it fills.", "?undo|slacken ?charge"),
    (
        "Close the flow and return valves.|Radiator valve shut at both ends, count the turns on the lockshield.",
        "isolate ?isolate ?record",
    ),
    (
        "Magnetic filter: both valves off, bleed it, lid off, sludge out, new O-ring and lid back on.",
        "isolate ?isolate release|purge|undo remove|undo ?clean fit|make",
    ),
    // Hot and cold water.
    (
        "Cold main off, open the kitchen tap and the lowest hot.",
        "isolate undo|release|restore ?undo|release|restore",
    ),
    (
        "Shut the cold valve.|Unscrew the cartridge from the mixing valve with a 22 socket and draw it straight.",
        "undo|remove ?remove",
    ),
    ("Strainer out, rinse it under the tap, back in with a smear of grease.", "remove|undo clean ?fit|make"),
    ("Open up the main a bit at a time and watch the new joint.", "restore test|inspect|read"),
    ("The T and P valve should not be passing; a drip means a new one.", "?inspect|test"),
    ("Hot tap 48 to 50 after a minute, cold under 20 after two.", "?start read|test ?read|test"),
    // Refrigerant.
    (
        "Close the service valves.|Undo the liquid line flare with two spanners and cap both ends straight away.",
        "undo place ?place",
    ),
    ("Pressure up with dry nitrogen to 25 bar and leave it an hour.", "test|charge ?wait ?read"),
    ("Compressor plug off, crankcase heater lead too.", "undo|isolate ?undo|isolate"),
    // Oil.
    (
        "Shut the oil valve at the filter.|Filter bowl off, tip the sludge in the tray, new element and ring in.",
        "undo|remove ?fit|make ?make ?release",
    ),
    (
        "Burner out on its slide rail: two clamp nuts slack, then draw it back till it stops.",
        "slacken|undo ?remove|aside ?remove|aside",
    ),
    ("Take the photocell out.|Photocell wiped and back in, seated square.", "?clean fit|make"),
    // Condensate, flue, air.
    (
        "Syphon off its bayonet, empty it down the sink, flush it and refit.",
        "remove|undo ?release clean|release|purge ?fit|make",
    ),
    ("Make sure the condensate runs free before the case goes on.", "?test|inspect"),
    ("Flue terminal clear, no dents, guard on tight.", "?inspect"),
    ("Fan off its four rubber feet, unplug it as it comes.", "remove|undo undo|isolate"),
    (
        "Undo the fan plug.|Take the fan out.|Fan in, feet pressed home, plug till it clicks.",
        "fit make|fit ?make",
    ),
    (
        "Analyser probe in the test point, boiler on max, read: CO2 8.8 to 9.4 %, ratio under 0.004.",
        "?place|fit ?start test|read ?read",
    ),
    // Nouns and verbs that look alike.
    ("Fit the head.|Run in the four head screws no more than finger tight.", "make|tighten"),
    ("Close the gas cock.|Any score a fingernail catches, the block is scrap.", ""),
    ("PCB tray down on its hinge.", "?aside"),
    ("Diverter motor up and off.", "remove"),
    ("Wipe a smear of silicone grease on the O-ring.", ""),
    ("Undo the cover screws.|Cartridge gets changed regardless.", ""),
    ("Unplug the high-pressure switch.", "undo"),
    ("Remove the three screws of the front panel.|Remove the M4 screw from the wiring plug.", "undo"),
    (
        "Shut the cold stopcock.|Push a hose on the drain cock, run it to a gully and open the cock.",
        "place undo|release",
    ),
    // Told, on a condition, or of the customer.
    ("If the union weeps, shut down and remake it.", ""),
    ("Your mate should have the isolator off by now.", ""),
    ("The old seal usually comes away with the cover.", ""),
    ("Keep the cover on its hooks until the plug is out.", ""),
    ("It is no good with the valve half open.", ""),
    ("Customer shown how to top it up.", "?tell"),
    ("Nothing goes back on until both unions are dry.", ""),
    ("Watch your knuckles on the bracket, cover back on last.", "?fit"),
];

/// Lines that stand for a way of speaking, each with others that look alike.
pub(super) const WAYS: &[(&str, &str)] = &[
    // What leads to a place switches nothing on or off.
    ("Switch off the isolator.|Turn the spindle with pliers on the flat.", ""),
    ("Switch off the isolator.|Turn the pump over on its side.", ""),
    ("Switch off the isolator.|Switch the isolator on the wall back on.", "restore ?start"),
    ("Switch the boiler off at the spur.", "?shutdown isolate"),
    // What is told or forbidden acts on nothing.
    (
        "Close the pump valves.|Crack the top union, it'll spit a drop and then it should stop.",
        "slacken|undo",
    ),
    ("Open the clip, don't pull the capillary.", "undo"),
    ("Undo the cover screws, never the ones on the fan housing.", "undo"),
    ("Lift the pump out, she's about three kilo with the bracket.", "remove"),
    ("Shut the gas cock, you'll hear the valve click.", "isolate"),
    ("Close the gas cock.|This one was pumping up.", ""),
    ("Close the flow valve.|The old one is draining through the tap.", ""),
    // What follows from it is an order all the same.
    ("Close the gas cock.|The pipe is in the way, so undo the union at the valve.", "undo"),
    ("Close the flow valve and the return valve.|It still drips, so close the stop tap too.", "isolate"),
    // "The same with" spells nothing out.
    (
        "Switch off the rotary isolator, lock and tag, same with the 6 A breaker.",
        "isolate lock ?isolate ?lock ?place",
    ),
    // How something is, before its name.
    ("Close the flow valve.|Catch it in a clean can.", ""),
    ("Close the flow valve.|Catch it in clean cans and keep it for refill.", ""),
    ("Frost warning: below 3 degrees the plates freeze.", ""),
    ("Drive the valve by test menu.", ""),
    // What is shut off and called a tap.
    ("Shut the oil tap at the filter.", "isolate"),
    ("Close the fuel tap.|Fuel tap open.", "restore"),
    ("Open the kitchen hot tap.|Close the hot tap.", "make|isolate"),
    // Lids.
    ("Lid up on the boiler.", "?aside|undo|remove"),
    ("Lift the lid.|Lid down.", "?fit|make"),
    // Where nuts are is no order.
    ("Close the pump valves.|Two union nuts on the pump, inch and a half.", ""),
    ("Undo the six cover screws.|Six screws back in the cover.", "make"),
    // She.
    ("Close the pump valves.|Undo the pump unions.|Hold the pump and lift her out towards you.", "remove"),
    ("Close the pump valves.|Undo the pump unions and lift the pump out.|Wipe her down.", "?clean"),
    // Screws that say what they hold.
    (
        "Undo the two M5 screws that hold the plate heat exchanger to the blocks.|Take the exchanger out.",
        "remove",
    ),
    (
        "Undo the two casing screws and take off the casing.|Undo the two screws that hold the fan flange to the burner hood.|Make both casing screws.",
        "make",
    ),
    // Two parts unplugged at once.
    ("Unplug the hot water sensor and the flow turbine.", "undo undo"),
    ("Unplug the fan and the ignition lead.|Plug the fan back in.", "make"),
    // Nuts with a pipe thread are joints.
    ("Close the gas cock.|Undo the G 3/4 nut at the gas valve and the G 1/2 nut at the meter.", "undo undo"),
    (
        "Close the gas cock.|Undo the G 3/4 nut at the gas valve and the G 1/2 nut at the meter.|Tighten the G 1/2 nut to 25 Nm and the G 3/4 nut to 35 Nm.",
        "make|tighten make|tighten",
    ),
    // What is let down to a pressure keeps it.
    ("Close the flow valve.|Let it down to 1.6 bar cold.", ""),
    (
        "Close the flow valve.|Open the drain cock and let it down to 0 bar.",
        "undo|release ?release|undo ?read|prove",
    ),
    // A trap is filled by hand.
    (
        "Close the cold water valve.|Pull the trap off.|Fill the trap with 200 ml of water and refit it.",
        "fit|make ?charge",
    ),
    // Shorthand.
    ("Close the flow valve.|Hose on drain tap.", "place"),
    ("Close the gas cock.|Hose on drain tap leaks a little.", ""),
    ("Undo 3 screws ST4.2 x 13 at the side panel.", "undo"),
    ("Switch off the spur.|Slide the panel down 20 mm and out.", "remove|undo"),
    ("Set the unit to standby on the controller.", "shutdown"),
    ("Ask the customer for the fault history.", "tell|ask"),
    ("Switch off the spur.|Fuse out.|Fuse in, spur on.", "?restore restore"),
    ("Switch off the fused spur.|Fit the lock-off cover and keep the key in your pocket.", "lock"),
    // A tissue seeks water.
    (
        "Close the pump valves.|Undo both pump unions.|Make both pump unions.|Hold a dry tissue under both unions and wait five minutes.",
        "test ?wait",
    ),
    (
        "Undo both pump unions.|Make both pump unions.|Feel round the unions again now that it's hot.",
        "test|inspect",
    ),
    // Nothing leaks at a lead.
    (
        "Close the gas cock.|Undo the earth lead of the panel.|Sniff round the unit with the detector, earth lead on the panel.",
        "test ?make",
    ),
    ("Undo the sensor plug and take the sensor out.|Feel the pipe go warm, sensor signal 0.5 V.", ""),
    // For nobody is waited.
    ("Close the gas cock.|Undo the union, holding against the valve body with a second spanner.", "undo"),
    ("Carry out a tightness test at 20 mbar.", "test"),
    ("Wipe the four seats clean with a cloth.", "?clean"),
    ("Let the phial hang.", ""),
    ("Set her on constant pressure.", "?set"),
    // What locks comes off where the current comes back.
    (
        "Switch off the breaker and lock it off.|Cover on, two nuts nipped, lock off the breaker, power up.",
        "?fit ?make restore ?take ?start",
    ),
    (
        "Switch off the isolator and lock it off.|Panel on, lock off the isolator, isolator back on.",
        "fit restore ?take",
    ),
    ("Switch off the spur.|Lock off the spur, tag on, key in your pocket.", "lock place"),
    ("Switch off the spur.|Lock off the spur.", "lock"),
    ("Switch off the isolator and lock it.|Power back up.", "restore|start"),
    // What is spun in is no drain cock.
    (
        "Close the cold valve.|Open the drain cock.|New washer, spin the relief valve in till it stops, then 30 Nm.",
        "?fit|make ?make",
    ),
    (
        "Close the flow valve.|Open the drain cock.|New o-ring, wind the valve in by hand, 20 Nm.",
        "?fit|make ?make",
    ),
    ("Close the flow valve.|Open the drain cock.|Screw the drain cock in.", "make"),
    ("Close the flow valve.|Open the drain cock.|Close the cock.", "make"),
    // A clip that is pushed back comes loose, and what runs out is no gas.
    (
        "Close the gas cock.|Spring clip back with the grips, hose off, drain into a tray.",
        "?slacken|undo undo|remove ?release",
    ),
    (
        "Close the gas cock.|Slide the clip back along the hose and pull the hose off.",
        "?slacken|undo undo|remove",
    ),
    ("Close the gas cock.|Clip back, condensate hose off.", "?undo undo|remove"),
    ("Close the gas cock.|Squeeze the clip back and pull the condensate hose off.", "undo undo|remove"),
    ("Undo the hose clip and pull the hose off.|Hose on, clip back on.", "make ?make"),
    (
        "Close the flow valve.|Open the drain cock and drain the heating into a bucket.",
        "undo|release ?release",
    ),
    // What has stopped shuts nothing down.
    ("Close the flow valve.|Drain's stopped, undo the pump unions.", "undo"),
    ("Close the flow valve.|The drip stopped, so undo the union.", "undo"),
    ("Boiler's switched off already, so just close the gas cock.", "isolate"),
    ("Stop the boiler.", "shutdown"),
    ("Let the burner stop, then switch off the spur.", "?shutdown isolate"),
    // At which load.
    ("Go to minimum load, CO2 lower than at full load.", "start ?read|test"),
    // What is smeared on is no part, and neither is anybody's finger.
    ("Put a dab of red paint on the throttle screw.", ""),
    ("Undo the two cover screws.|Put a blob of lacquer on the cover screws.", ""),
    ("Take the cover off.|Now you can put your fingers in.", ""),
    ("Take the cover off.|Put your thumb over the spigot.", ""),
    ("Take the cover off.|Now you can put the cover on.", "fit"),
    // What swings back is put back, if it is aside.
    ("Swing the control box down.|Swing the control box back up.", "fit"),
    ("Swing the control box back up.", ""),
    ("Swing the panel up out of the way.", "aside"),
    // Each has its own torque.
    (
        "Undo the two flange screws and the four cover nuts.|Flange screws to 3 Nm first and only then the four cover nuts to 8 Nm.",
        "?make|tighten make|tighten",
    ),
    ("Undo the two spades and the earth nut.|Spades on, earth first, that 7 mm nut 2 Nm.", "make ?make"),
    // The cap that was placed comes off again.
    ("Close the gas cock.|Undo the gas union.|Cap the gas union with the G 3/4 blanking cap.", "place"),
    (
        "Close the gas cock.|Undo the gas union.|Cap the open pipe with a blanking cap.|Blanking cap off.",
        "take",
    ),
    (
        "Close the gas cock.|Undo the gas union.|Cap the open pipe with a blanking cap.|Remove the blanking cap.",
        "take",
    ),
    ("Switch off the fused spur, fit the locking cap with your padlock.", "isolate lock"),
    // A cap of what is electrical covers it.
    ("Switch off the breaker.|Pop the immersion cap off, one 8 mm nut.", "undo remove"),
    ("Switch off the breaker.|Terminal cap off, two screws.", "undo remove"),
    // What comes in lets nothing out.
    ("Close the gas cock.|Open the gas cock slowly, let the pressure settle for a minute.", "restore wait"),
    ("Close the flow valve.|Open the drain cock and let the pressure go.", "undo|release ?release"),
    // Somewhere is nothing.
    ("Unplug the stat.|Slide the stat out and put it somewhere it won't get trod on.", "remove"),
    ("Take the lid off.|Put the lid where nobody can stand on it.", ""),
    ("Take the lid off.|Put the lid back on where it was.", "fit"),
    ("Put the cap in your pocket.", ""),
    // A tap that runs dry starts nothing.
    ("Close the stop tap.|Run the hot tap till it's down to a trickle.", "?undo|release"),
    ("Run the kitchen tap until it stops and leave it open.", "?undo|release"),
    ("Run the hot tap for 2 minutes, 48 to 52 at the spout.", "start wait ?read|test"),
    // At what somebody looks, and on what condition.
    ("Take the terminal cap off.|New valve says 3 bar on the cap, always look.", ""),
    ("Hose on the drain cock, and feel it first, I go slow if the water's hot.", "place"),
    ("Take the cover off.|Look at the cover.", "inspect"),
    ("Have a look, see how it sits, then take the lid off.", "remove"),
    // Left, right and colours.
    ("Unclip the silencer from the fan, pull left and out.", "undo ?remove"),
    ("Grey 2-pin plug off, quarter turn right, pull out.", "undo ?remove"),
    ("Undo the brown wire.|Brown wire back on.", "make"),
    // In a list of things a word is none of the verbs that it can be.
    ("Unplug the fan.|Silencer, clip, fan plug back on.", "make ?fit ?make"),
    // The verb stands around a list.
    ("Unplug the flow sensor and the NTC.|Plug the flow sensor and the NTC in.", "make make"),
    ("Unplug the flow sensor and the NTC.|Plug the flow sensor and the NTC back in.", "make make"),
    ("Unplug the fan and the gas valve.|Push the fan plug and the gas valve plug home.", "make make"),
    ("Undo the two screws of the cover.|Take the cover off.|Screw the cover back on.", "fit|make ?make"),
    ("Unscrew the filter bowl.|Screw the filter bowl back on.", "fit|make"),
    ("Unscrew the two caps and the nut.|Screw the two caps and the nut back on.", "?fit fit|make make"),
    ("Unplug the fan and the pump.|Plug the fan and the pump back in.", "make make"),
    ("Pull the plugs off the flow sensor and the NTC.|Plug the flow sensor and the NTC in.", "make ?make"),
    // What is put back is never new.
    ("Plug the flow sensor and the NTC in.", ""),
    // A photograph before something is done.
    ("Unplug the fan, snap a picture before.", "undo photograph"),
    ("Snap a picture before you unplug the fan.", "photograph ?undo"),
    ("Snap a picture before unplugging the fan.", "photograph ?undo"),
    ("Take a picture of the wiring before you unplug the fan.", "photograph ?undo"),
    ("Take a photo of the terminals before you pull the plugs.", "photograph ?undo"),
    ("Get a photo of the plugs before they come off.", "photograph ?undo"),
    ("Take a photo before and after.", "photograph"),
    ("Don't take a picture of the wiring before you unplug the fan.", ""),
    ("Photograph the wires before you undo them.", "photograph"),
];
