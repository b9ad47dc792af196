use super::*;
use crate::mixing::part::Part;
use crate::swatches::calibrate::Seen;

fn swatches(masstone: Lab<f64>) -> Origin {
    Origin::Swatches {
        paper: KitPaper::Stock(Stock::Cream),
        masstone: Patch::new(&Seen::Lab(masstone)).unwrap(),
        wash: None,
    }
}

#[test]
fn limits_are_named() {
    let origin = || swatches(Lab::new(40.0, 20.0, 10.0));
    let refused = |result: Result<OwnPaint, Error>| result.unwrap_err().to_string();
    assert_eq!(refused(OwnPaint::new(" \n", origin())), "a paint needs a name");
    assert_eq!(
        refused(OwnPaint::new(&"x".repeat(41), origin())),
        "a paint's name is longer than 40 characters"
    );
    let own = || OwnPaint::new("Quay red", origin()).unwrap();
    assert_eq!(
        refused(own().with_ratings([Some(5), None, None, None])),
        "transparency is 5, not between 0 and 4"
    );
    assert_eq!(
        refused(own().with_ratings([None, None, None, Some(0)])),
        "lightfastness is 0, not between 1 and 8"
    );
    let mixture = Origin::Mixture(Recipe::of_numbers(&[(1, 1), (PaintNumber::FIRST_OWN.get(), 1)]));
    assert_eq!(refused(OwnPaint::new("x", mixture)), "a mixture is made of paints of the built-in shelf");
}

#[test]
fn a_mixture_is_what_its_recipe_makes() {
    let shelf = Shelf::built_in();
    let numbers = ["pb29", "pbr7-burnt-sienna"].map(|key| shelf.find(key).unwrap().number);
    let recipe = Recipe::new(&[Part::new(numbers[0], 2), Part::new(numbers[1], 1)]).unwrap();
    let own = OwnPaint::new("Harbour grey", Origin::Mixture(recipe.clone())).unwrap();
    let paint = own.paint(PaintNumber::FIRST_OWN, None, shelf).unwrap();
    assert_eq!(paint.film, recipe.film(shelf).unwrap());
    assert_eq!(paint.key, "own:harbour grey");
    assert!(paint.granulates());
    let smooth = own
        .with_ratings([None, None, Some(0), None])
        .unwrap()
        .paint(PaintNumber::FIRST_OWN, None, shelf)
        .unwrap();
    assert!(!smooth.granulates());
}

#[test]
fn a_paint_shows_its_swatch() {
    let wanted = Lab::new(38.0, 52.0, 30.0);
    let own = OwnPaint::new("Quay red", swatches(wanted)).unwrap();
    let shelf = Shelf::built_in();
    assert_eq!(
        own.paint(PaintNumber::FIRST_OWN, None, shelf).unwrap_err().to_string(),
        "the film of Quay red's swatches is not known"
    );
    let film = own.film_of_swatches(shelf).unwrap();
    let paint = own.paint(PaintNumber::FIRST_OWN, film.as_ref(), shelf).unwrap();
    let view = View::new(&Stock::Cream.paper(), Light::D65);
    let found = view.colour(&paint.film, 1.0);
    let found = Lab::new(found.l.into(), found.a.into(), found.b.into());
    assert!(crate::colour::ciede2000(found, wanted) < 0.5, "{found:?}");
    assert_eq!((paint.hue.as_str(), paint.tier), ("red", Tier::Swatched));
}
