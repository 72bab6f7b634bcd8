//! Several things of one name, or of several owners: each is made, and each is meant by what tells them apart.

/// Lines, split at "|", and the actions of the last.
pub(super) const SEVERAL: &[(&str, &str)] = &[
    // Letters and numbers tell things of one name apart.
    ("Close heating valve A and heating valve B.", "isolate heating-valve-A heating-valve-B"),
    ("Close heating valve A and heating valve B.|Open valve B.", "restore heating-valve-B"),
    ("Close heating valves A, B and C.|Open valves A and C.", "restore heating-valve-A heating-valve-C"),
    (
        "Close the zone 1 heating valve and the zone 2 heating valve.|Open the zone 2 heating valve.",
        "restore zone-2-heating-valve",
    ),
    ("Remove filter 1 and filter 2.|Refit filter 1.", "fit filter-1"),
    ("Remove filter 1.|Remove filter 2.|Refit filter 1.|Refit the filter.", "fit filter-2"),
    ("Pull the fan plug CN4 and the sensor plug CN11.|Push the plug CN11 back in.", "make sensor-plug-CN11"),
    ("Close the heating valves V1 and V2.|Open V2.", "restore heating-valve-V2"),
    ("Remove pump 1.|Refit it.", "fit pump-1"),
    // What only counts, or is an article, is no label.
    ("Slacken the heating union nut 1 turn.", "slacken heating-union-nut"),
    ("CLOSE THE HEATING VALVE A LITTLE.", "isolate heating-valve"),
    // A part is called after what it is of.
    ("Take off the cover of the fan.|Take off the cover of the pump.", "remove pump-cover"),
    (
        "Take off the cover of the fan.|Take off the cover of the pump.|Refit the cover of the fan.",
        "fit fan-cover",
    ),
    ("Lift the lid off the tank and the lid off the trap.", "remove tank-lid · remove trap-lid"),
    ("Take the covers off the fan and the pump.", "remove fan-cover pump-cover"),
    ("Take the covers off the fan and the pump.|Refit the covers.", "fit fan-cover pump-cover"),
    ("Take off the front cover.|Refit the cover of the fan.", "fit front-cover"),
    ("Swing the pipes clear of the exchanger.", "aside pipes"),
    (
        "Take off the cover of the fan: four screws.|Take off the cover of the pump: two screws.",
        "undo pump-cover-screws · remove pump-cover",
    ),
    // What holds or joins each of two.
    ("Take the screws out of the fan and the pump.", "undo fan-screws pump-screws"),
    ("Undo the screws of the fan and the clips of the pump.", "undo fan-screws pump-clips"),
    (
        "Undo the screws of the fan and the screws of the pump.|Refit the screws of the pump and the fan.",
        "make fan-screws pump-screws",
    ),
    ("Take the leads off the fan and the pump.|Refit the leads.", "make fan-lead pump-lead"),
    ("Undo the nuts of the flow union and the return union.", "undo flow-union-nuts return-union-nuts"),
    ("Undo the four screws of the fan and the pump.", "undo fan-screws"),
    (
        "Unplug the supply fan lead.|Unplug the extract fan lead.|Plug the fan leads in.",
        "make supply-fan-lead extract-fan-lead",
    ),
    // One after the other.
    ("Remove the fan, then the pump.", "remove fan pump"),
    ("Pull the fan plug, then the pump plug.", "undo fan-plug pump-plug"),
    // Items of one name are told apart by where they are.
    ("Put a cloth over the fan and a cloth over the pump.", "place cloth cloth-2"),
    ("Put a cloth over the fan and a cloth over the pump.|Take the cloth off the fan.", "take cloth"),
    ("Put a cloth over the fan.|Put a cloth over the pump.|Take the cloth off the fan.", "take cloth"),
    ("Put a cloth over the fan.|Put a cloth over the pump.|Take both cloths away.", "take cloth cloth-2"),
    ("Put a cloth over the fan.|Put the cloth over the pump.", "place cloth"),
    ("Put a cloth over the fan cover.|Put a cloth over the fan.|Take the cloth off the fan.", "take cloth-2"),
    // Twins: what says which is never left out of account.
    (
        "Take the lid off the left tank.|Take the lid off the right tank.|Refit the lid of the right tank.",
        "fit right-tank-lid",
    ),
    ("Right radiator valve closed.|Valves on left radiator opened.", ""),
    ("Close loop 1 flow valve.|Open loop 3.", ""),
    (
        "Close the flow valve of radiator 1.|Close the flow valve of radiator 2.|Open the flow valve of radiator 1.",
        "restore radiator-1-flow-valve",
    ),
    (
        "Close the isolating valves of pump 1.|Close the isolating valves of pump 2.",
        "isolate pump-2-isolating-valve-1 pump-2-isolating-valve-2",
    ),
    (
        "Take the belt off the left fan.|Take the belt off the right fan.|Refit the belt on the left fan.",
        "fit left-fan-belt",
    ),
    (
        "Take the left fan's belt off.|Take the right fan's belt off.|Refit the left fan's belt.",
        "fit left-fan-belt",
    ),
    ("Undo the left fan's screws and the right fan's screws.", "undo left-fan-screws right-fan-screws"),
    (
        "Take strainer out of pump 1.|Take strainer out of pump 2.|Refit strainer of pump 1.",
        "fit pump-1-strainer",
    ),
    ("Take off the cover of fan 1 and the cover of fan 2.", "remove fan-1-cover fan-2-cover"),
    ("Take off the covers of fan 1 and fan 2.|Refit the cover of fan 1.", "fit fan-1-cover"),
    (
        "Take off the rear cover of the fan and the rear cover of the pump.",
        "remove fan-rear-cover pump-rear-cover",
    ),
    ("Take the filter out of the fan and the filter out of the pump.", "remove fan-filter pump-filter"),
    ("Take the bracket off the fan and the bracket off the pump.", "remove fan-bracket pump-bracket"),
    ("Undo the clip on the left hose and the clip on the right hose.", "undo left-hose-clip right-hose-clip"),
    (
        "Undo the screws on the left cover and the screws on the right cover.",
        "undo left-cover-screws right-cover-screws",
    ),
    ("Undo the left and right screws of the cover.", "undo cover-left-screw cover-right-screw"),
    ("Take off the fan and pump covers.", "remove fan-cover pump-cover"),
    (
        "Close the heating valve.|Open the drain of the pump and the drain of the tank.",
        "undo pump-drain tank-drain",
    ),
    (
        "Open the vent on the left radiator and the vent on the right radiator.",
        "undo left-radiator-vent right-radiator-vent",
    ),
    (
        "Close the valve on the gas pipe and the valve on the water pipe.",
        "isolate gas-pipe-valve water-pipe-valve",
    ),
    ("Disconnect plug A and plug B.", "undo plug-A plug-B"),
    ("Remove lead A, lead B and lead C.", "undo lead-A lead-B lead-C"),
    ("Pull the lead off the fan and the lead off the pump.", "undo fan-lead · undo pump-lead"),
    ("Undo the left and the right screw.", "undo left-screw right-screw"),
    (
        "Close left radiator flow valve and return valve.|Close right radiator flow valve and return valve.",
        "isolate right-radiator-flow-valve right-radiator-return-valve",
    ),
    ("Put two trays under the pump.|Take the trays away.", "take trays"),
    ("Close the gas cock and the stop valve.|Turn on the gas and the water.", "restore gas-cock stop-valve"),
    // A side is no verb.
    ("Left radiator valve closed.|Right radiator valve closed.", "isolate right-radiator-valve"),
    ("Take the upper cover off.|Take lower cover off.", "remove lower-cover"),
    ("Remove supply filter.|Remove extract filter.|Refit supply filter.", "fit supply-filter"),
    ("Open the supply door.|Open extract door.", "aside extract-door"),
    ("Extract the motor.", "remove motor"),
    ("Lower the tray.", "aside tray"),
    // Whoever locks off has shut before, and only what is locked is unlocked.
    ("Lock off the gas cock.", "isolate gas-cock · lock gas-cock"),
    ("Close the gas cock.|Lock off the gas cock.", "lock gas-cock"),
    ("Switch off the isolator and lock off the gas cock.|Unlock it.", "restore gas-cock"),
    // What holds a part comes back with it.
    ("Close the heating valve.|Undo the pump union and take out the pump.|Refit it.", "fit pump"),
    ("Unplug the fan and take it out.|Refit it.", "fit fan"),
    // "Them" are several.
    ("Close the flow valve and the return valve.|Remove the pump.|Refit it and open them.", "fit pump"),
    // What the line has named in full is meant by its last word.
    (
        "Close the heating valve.|Put a hose on the drain cock.|Undo the nuts of the flexible hose and take the hose out.",
        "undo flexible-hose-nuts · remove flexible-hose",
    ),
    (
        "Close the heating valve.|Unscrew the cap of the drain cock and push a hose on, then open the cock and drain the heating.",
        "undo cap · place hose · undo drain-cock · release heating what=pressure by=drain through=drain-cock",
    ),
    ("Take the warning tag off the gas cock and open the cock slowly.", "restore gas-cock"),
    (
        "Shut the flow, the return and the cold water inlet.",
        "isolate flow-valve return-valve cold-water-inlet-valve",
    ),
    (
        "Shut the cold main, the domestic hot outlet and both heating valves.",
        "isolate cold-main-valve domestic-hot-outlet-valve heating-valve-1 heating-valve-2",
    ),
    // One of those that are one thing, and all of several.
    ("Close the heating valve.|Undo the two pump unions.|Do up the pump union.", "make pump-unions 1"),
    (
        "Close the heating valve.|Undo the union of the pump.|Undo the union of the heater.|Renew the washers.",
        "make pump-union heater-union seal=new",
    ),
];
