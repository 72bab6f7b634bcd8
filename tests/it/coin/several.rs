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
