//! The other forms of a word that no list holds: "twirl, twirls, twirled, twirling".
//!
//! Phrases of the language list their forms. Those of a procedure may have any word as a verb, so theirs are made by the
//! rules of spelling, and those of common verbs that follow none are listed. A form too many does no harm: it is a word
//! that nobody writes.

/// Verbs that follow no rule, each with all its forms.
const IRREGULAR: &[&str] = &[
    "bend bends bent bending",
    "bind binds bound binding",
    "bite bites bit bitten biting",
    "bring brings brought bringing",
    "cut cuts cutting",
    "dig digs dug digging",
    "do does did done doing",
    "draw draws drew drawn drawing",
    "drive drives drove driven driving",
    "feed feeds fed feeding",
    "find finds found finding",
    "get gets got gotten getting",
    "give gives gave given giving",
    "go goes went gone going",
    "have has had having",
    "hit hits hitting",
    "hold holds held holding",
    "keep keeps kept keeping",
    "lay lays laid laying",
    "lead leads led leading",
    "leave leaves left leaving",
    "let lets letting",
    "lose loses lost losing",
    "make makes made making",
    "put puts putting",
    "run runs ran running",
    "send sends sent sending",
    "set sets setting",
    "shake shakes shook shaken shaking",
    "shut shuts shutting",
    "sling slings slung slinging",
    "spin spins spun spinning",
    "split splits splitting",
    "spread spreads spreading",
    "stick sticks stuck sticking",
    "strike strikes struck striking",
    "swing swings swung swinging",
    "take takes took taken taking",
    "tear tears tore torn tearing",
    "throw throws threw thrown throwing",
    "wind winds wound winding",
    "wring wrings wrung wringing",
];

const VOWELS: &str = "aeiou";

/// All forms of a verb of which one is written, itself among them.
pub(super) fn as_verb(word: &str) -> Vec<String> {
    let listed = |forms: &&&str| forms.split(' ').any(|form| form == word);
    if let Some(forms) = IRREGULAR.iter().find(listed) {
        return forms.split(' ').map(str::to_owned).collect();
    }
    let mut all = vec![word.to_owned()];
    for base in bases(word) {
        let forms = of_base(&base);
        if forms.iter().any(|form| form == word) {
            all.extend(forms);
        }
    }
    all.sort_unstable();
    all.dedup();
    all
}

/// One and several of a word: "twirl, twirls".
pub(super) fn as_noun(word: &str) -> Vec<String> {
    if !is_word(word) {
        return vec![word.to_owned()];
    }
    let one = [word.strip_suffix("es"), word.strip_suffix('s')].into_iter().flatten();
    let one = one.filter(|one| is_word(one) && several(one) == word).map(str::to_owned);
    [word.to_owned(), several(word)].into_iter().chain(one).collect()
}

/// Whether something is long enough for a word with endings, of letters alone and with a vowel.
fn is_word(word: &str) -> bool {
    word.len() > 2
        && word.bytes().all(|b| b.is_ascii_lowercase())
        && word.contains(|c| VOWELS.contains(c) || c == 'y')
}

fn ends_doubled(word: &str) -> bool {
    matches!(word.as_bytes(), [.., one, other] if one == other)
}

/// What a word may be a form of.
fn bases(word: &str) -> Vec<String> {
    let mut found = vec![word.to_owned()];
    for ending in ["s", "es", "ed", "d", "ing"] {
        // "Spring" is no form of anything.
        let has_vowel = |stem: &&str| stem.contains(|c| VOWELS.contains(c) || c == 'y');
        let Some(stem) = word.strip_suffix(ending).filter(has_vowel) else { continue };
        found.extend([stem.to_owned(), format!("{stem}e")]);
        found.extend(stem.strip_suffix('i').map(|stem| format!("{stem}y")));
        found.extend(
            stem.get(..stem.len().saturating_sub(1)).filter(|_| ends_doubled(stem)).map(str::to_owned),
        );
    }
    found.retain(|base| is_word(base));
    found
}

/// The forms of a verb by the rules of spelling.
fn of_base(base: &str) -> Vec<String> {
    let mut forms = vec![base.to_owned(), several(base)];
    let stems = match (base.strip_suffix('e'), base.strip_suffix('y')) {
        (Some(stem), _) => vec![(format!("{stem}ed"), stem.to_owned())],
        (_, Some(stem)) if !stem.ends_with(|c| VOWELS.contains(c)) => {
            vec![(format!("{stem}ied"), base.to_owned())]
        }
        _ => {
            let doubled = doubled(base).map(|stem| (format!("{stem}ed"), stem));
            // "Loosened", but "slipped": only a short word must have its last letter twice.
            let single = doubled.is_none() || n_vowels(base) > 1;
            let single = single.then(|| (format!("{base}ed"), base.to_owned()));
            single.into_iter().chain(doubled).collect()
        }
    };
    for (past, stem) in stems {
        forms.extend([past, format!("{stem}ing")]);
    }
    forms
}

fn n_vowels(word: &str) -> usize {
    word.chars().filter(|c| VOWELS.contains(*c)).count()
}

/// A word that ends in one vowel and one consonant, with that twice: "slipp".
fn doubled(base: &str) -> Option<String> {
    let [.., before, vowel, last] = base.as_bytes() else { return None };
    let is_vowel = |b: &u8| VOWELS.bytes().any(|vowel| vowel == *b);
    let doubles = !is_vowel(before) && is_vowel(vowel) && !is_vowel(last) && !b"wxy".contains(last);
    doubles.then(|| format!("{base}{}", char::from(*last)))
}

/// With the ending of the third person, and of several.
fn several(word: &str) -> String {
    match word.strip_suffix('y') {
        Some(stem) if !stem.ends_with(|c| VOWELS.contains(c)) => format!("{stem}ies"),
        _ if ["s", "x", "z", "ch", "sh"].iter().any(|end| word.ends_with(end)) => format!("{word}es"),
        _ => format!("{word}s"),
    }
}

#[cfg(test)]
mod tests {
    use super::{as_noun, as_verb};

    #[test]
    fn every_form_of_a_verb_leads_to_all_of_them() {
        for forms in [
            "knock knocked knocking knocks",
            "twirl twirled twirling twirls",
            "slip slipped slipping slips",
            "ease eased easing eases",
            "pry pried pries prying",
            "fish fished fishes fishing",
            "give gave given gives giving",
            "swivel swiveled swiveling swivelled swivelling swivels",
        ] {
            for written in forms.split(' ') {
                let all = as_verb(written);
                for form in forms.split(' ') {
                    assert!(all.iter().any(|known| known == form), "{form} of {written}: {all:?}");
                }
            }
        }
    }

    #[test]
    fn a_word_that_only_looks_alike_is_no_form() {
        for (word, other) in [
            ("plane", "planned"),
            ("plan", "planed"),
            ("spring", "spred"),
            ("string", "stred"),
            ("knock", "knack"),
            ("off", "offing"),
        ] {
            let all = if word == "off" { as_noun(word) } else { as_verb(word) };
            assert!(all.iter().all(|known| known != other), "{other} of {word}: {all:?}");
        }
    }

    #[test]
    fn one_and_several_go_together_and_signs_have_no_others() {
        assert_eq!(as_noun("twirl"), ["twirl", "twirls"]);
        assert!(as_noun("pushes").contains(&"push".to_owned()));
        assert_eq!(as_noun("10"), ["10"]);
    }
}
