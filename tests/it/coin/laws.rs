//! What holds for any words and any map.

use super::{Names, Typed};
use procedures_schema::capture::{Given, Here, line_here, line_making_here};
use procedures_schema::format;
use procedures_schema::lexicon::Lexicon;
use procedures_schema::model::{ApplianceMap, Handle, Id, IdSource, NumberedIds, Procedure, Stage};
use std::collections::BTreeSet;
use std::sync::Arc;

/// Verbs, nouns, amounts, sizes and what stands between.
const PIECES: &[&str] = &[
    "Close",
    "open",
    "undo",
    "take off",
    "unplug",
    "plug",
    "cap",
    "bond",
    "fit",
    "place",
    "drain",
    "vent",
    "set",
    "slacken",
    "tighten",
    "prove dead at",
    "remove",
    "lift out",
    "clean",
    "lock",
    "switch off",
    "release",
    "it",
    "them",
    "the",
    "a",
    "both",
    "all",
    "two of the four",
    "four",
    "12",
    "0",
    "second",
    "new",
    "gas",
    "heating",
    "mains",
    "flow",
    "return",
    "valve",
    "valves",
    "cock",
    "wall isolator",
    "fuse",
    "pump",
    "fan",
    "cover",
    "screws",
    "union nut",
    "unions",
    "drain cock",
    "air vent",
    "test point",
    "plug",
    "lead",
    "washer",
    "gasket",
    "tray",
    "manometer",
    "cap",
    "speed",
    "throttle",
    "terminals",
    "care",
    "hand",
    "cloth",
    "boiler",
    "of the",
    "at the",
    "with",
    "behind the",
    "from",
    "into a",
    "on",
    "to",
    "and",
    ",",
    ".",
    ":",
    ";",
    "G 3/4",
    "M6",
    "10 mm",
    "4 kg",
    "until",
    "if",
    "not",
    "ü",
    "…",
    "\"",
    "\n",
];

struct Dice(u64);

impl Dice {
    fn pick<'p>(&mut self, pieces: &[&'p str]) -> &'p str {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        pieces[usize::try_from(self.0 >> 33).expect("small") % pieces.len()]
    }
}

/// Everything of a map, written out; the stand-in feeds left out.
fn written(map: &ApplianceMap) -> BTreeSet<String> {
    let mut all = BTreeSet::new();
    let kept =
        map.isolators.iter().filter(|i| i.handle != Handle::None || !i.name.ends_with("not named yet"));
    all.extend(kept.map(|thing| format!("{thing:?}")));
    all.extend(map.components.iter().map(|thing| format!("{thing:?}")));
    all.extend(map.connections.iter().map(|thing| format!("{thing:?}")));
    all.extend(map.seals.iter().map(|thing| format!("{thing:?}")));
    all.extend(map.temporary.iter().map(|thing| format!("{thing:?}")));
    all.extend(map.settings.iter().map(|thing| format!("{thing:?}")));
    for circuit in &map.circuits {
        all.insert(format!("{} {} {:?}", circuit.id, circuit.name, circuit.kind));
        all.extend(circuit.sections.iter().map(|section| format!("{} {section:?}", circuit.id)));
    }
    all
}

#[test]
fn nothing_that_was_there_is_changed_and_what_is_made_can_be_kept() {
    let mut dice = Dice(0x9e37_79b9_7f4a_7c15);
    let mut n_made = 0;
    for _ in 0..120 {
        let mut map = Arc::<ApplianceMap>::default();
        let mut document = Procedure::new(Id::new("p"), "Invented");
        for _ in 0..8 {
            let words: String = (0..9).map(|_| dice.pick(PIECES)).collect::<Vec<_>>().join(" ");
            let here = Here::in_service(&map);
            let making =
                line_making_here(&words, &map, here.clone(), &Stage::Strip, Given::default(), &mut Names);
            let again = line_making_here(&words, &map, here, &Stage::Strip, Given::default(), &mut Names);
            assert_eq!(making, again, "{words}");
            assert!(written(&making.map).is_superset(&written(&map)), "{words}");
            let ids: Vec<&Id> = making.map.things().map(|(_, id, ..)| id).collect();
            assert_eq!(ids.iter().collect::<BTreeSet<_>>().len(), ids.len(), "{words}");
            for thing in &making.made {
                assert!(ids.contains(&&thing.thing), "{words}: {}", thing.name);
                assert!(!map.things().any(|(_, id, ..)| *id == thing.thing), "{words}: {}", thing.name);
            }
            assert_eq!(making.made.is_empty(), making.map == map, "{words}");
            n_made += making.made.len();
            map = making.map;
            document.map = map.clone();
            let text = format::write(&document);
            assert_eq!(format::read(text.as_bytes()).expect(&words), document, "{words}");
        }
    }
    assert!(n_made > 300, "only {n_made} things were made");
}

#[test]
fn a_line_without_a_new_thing_reads_as_before() {
    let (typed, _) =
        super::type_all("Close the gas cock.|Undo the gas union.|Take off the cover: four screws.");
    let map = &typed.document.map;
    for words in
        ["Open the gas cock", "Make the gas union", "Refit the cover", "Wait 10 minutes", "Tell the operator"]
    {
        let making =
            line_making_here(words, map, Here::in_service(map), &Stage::Refit, Given::default(), &mut Names);
        assert_eq!(making.reading, line_here(words, map, Here::in_service(map), &Stage::Refit), "{words}");
        assert_eq!((&making.map, making.made.len()), (map, 0), "{words}");
    }
}

/// Identities that are all the same.
struct Stubborn;

impl IdSource for Stubborn {
    fn next_id(&mut self, _: &str) -> Id {
        Id::new("cover")
    }
}

#[test]
fn identities_that_are_taken_are_asked_for_again() {
    let mut typed = Typed::new();
    typed.type_line("Take off the cover.", &Stage::Strip);
    let map = &typed.document.map;
    let words = "Undo the four screws of the hatch and take off the second cover";
    let making = line_making_here(
        words,
        map,
        Here::in_service(map),
        &Stage::Strip,
        Given::default(),
        &mut NumberedIds::default(),
    );
    assert_eq!(making.made.len(), 3);
    let making =
        line_making_here(words, map, Here::in_service(map), &Stage::Strip, Given::default(), &mut Stubborn);
    let ids: BTreeSet<&Id> = making.map.things().map(|(_, id, ..)| id).collect();
    assert_eq!(ids.len(), 4, "{ids:?}");
}

#[test]
fn every_verb_of_the_lexicon_is_survived() {
    let lexicon = Lexicon::for_language("en").expect("English");
    for verb in PIECES {
        for noun in PIECES {
            let words = format!("{verb} the {noun}");
            let map = Arc::<ApplianceMap>::default();
            let making = line_making_here(
                &words,
                &map,
                Here::in_service(&map),
                &Stage::Strip,
                Given::default(),
                &mut Names,
            );
            for action in &making.reading.actions {
                assert!(lexicon.says_at(&words, &action.says, action), "{words}");
            }
        }
    }
}
