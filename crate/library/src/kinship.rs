//! How much one pigment's chemistry says about another's spectrum.

/// Groups by a word of the chemical class; the first that fits counts.
const GROUPS: [(&str, Group); 35] = [
    ("perylene", Group::Organic("perylene")),
    ("quinacridone", Group::Organic("quinacridone")),
    ("phthalocyanine", Group::Organic("phthalocyanine")),
    ("diketopyrrolopyrrole", Group::Organic("pyrrole")),
    ("benzimidazolone", Group::Azo("benzimidazolone")),
    ("naphthol", Group::Azo("naphthol")),
    ("arylide", Group::Azo("arylide")),
    ("disazo", Group::Azo("disazo")),
    ("nickel", Group::Azo("metal complex")),
    ("azomethine", Group::Azo("metal complex")),
    ("isoindol", Group::Azo("isoindoline")),
    ("quinophthalone", Group::Azo("quinophthalone")),
    ("perinone", Group::Azo("perinone")),
    ("pyrazoloquinazolone", Group::Azo("pyrazoloquinazolone")),
    ("anthraquinone lake", Group::Organic("anthraquinone lake")),
    ("anthraquinone", Group::Organic("anthraquinone")),
    ("dioxazine", Group::Organic("dioxazine")),
    ("indigoid", Group::Organic("indigoid")),
    ("thioindigo", Group::Organic("thioindigo")),
    ("nitroso", Group::Organic("nitroso")),
    ("cadmium", Group::Mineral("cadmium")),
    ("iron manganese oxide", Group::Mineral("umber")),
    ("magnesium iron oxide", Group::Mineral("iron oxide")),
    ("iron oxide", Group::Mineral("iron oxide")),
    ("ferrocyanide", Group::Mineral("ferrocyanide")),
    ("spinel)", Group::Mineral("iron oxide")),
    ("titanium dioxide", Group::Mineral("white")),
    ("cobalt", Group::Mineral("cobalt")),
    ("aluminosilicate", Group::Mineral("ultramarine")),
    ("mixed metal oxide", Group::Mineral("titanate")),
    ("carbon", Group::Mineral("carbon")),
    ("chromium(iii)", Group::Mineral("chromium")),
    ("chrome tin", Group::Mineral("ceramic")),
    ("manganese", Group::Mineral("manganese")),
    ("manganate", Group::Mineral("manganese")),
];

/// A chemical group; azo pigments and those that look alike are one wider kind.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Group {
    Azo(&'static str),
    Organic(&'static str),
    Mineral(&'static str),
}

fn group(class: &str) -> Group {
    let found = GROUPS.iter().find(|(word, _)| class.contains(word));
    found.map_or(Group::Mineral("other"), |(_, group)| *group)
}

/// Kinship of two chemical classes, 1 for the same group.
///
/// Chosen by leaving paints out: none at all predicts mixes worse, steeper steps no better.
pub fn kinship(a: &str, b: &str) -> f64 {
    use Group::{Azo, Mineral, Organic};
    match (group(a), group(b)) {
        (Mineral("other"), Mineral("other")) => 0.3,
        (a, b) if a == b => 1.0,
        (Azo(_), Azo(_)) => 0.55,
        (Azo(_) | Organic(_), Azo(_) | Organic(_)) | (Mineral(_), Mineral(_)) => 0.3,
        _ => 0.15,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn relatives_are_nearer_than_strangers() {
        let near = kinship("perylene", "perylene");
        let azo = kinship("monoazo (arylide)", "benzimidazolone azo");
        let organic = kinship("perylene", "quinacridone (gamma)");
        let strange = kinship("perylene", "cobalt stannate");
        assert!(near > azo && azo > organic && organic > strange);
        assert_eq!(kinship("ferric ferrocyanide, extended", "ferric ammonium ferrocyanide"), 1.0);
    }
}
