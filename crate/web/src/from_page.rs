//! Plain values of the page, read into values of ours.
//!
//! A value is asked for what is wanted and says by its name what is amiss. Each
//! kind of object lists its fields once; what reads a field is shared by all,
//! which keeps the download small.

use std::cell::RefCell;

use js_sys::{Array, ArrayBuffer, JsString};
use wasm_bindgen::prelude::*;

/// What is amiss with a value, as the end of a sentence that begins with its name.
type Fault = String;

/// A value that can be read of the page's.
pub(crate) trait FromPage: Sized {
    fn from_page(value: &JsValue) -> Result<Self, Fault>;
}

#[wasm_bindgen]
extern "C" {
    type Object;

    #[wasm_bindgen(method, indexing_getter)]
    fn field(this: &Object, name: &JsString) -> JsValue;
}

thread_local! {
    /// Names of fields as the page has them: to make one takes longer than to read its field.
    static NAMES: RefCell<Vec<(&'static str, JsString)>> = const { RefCell::new(Vec::new()) };
}

/// The fields of an object.
pub(crate) struct Fields<'a>(&'a Object);

impl<'a> Fields<'a> {
    pub(crate) fn of(value: &'a JsValue) -> Result<Self, Fault> {
        if value.is_object() { Ok(Self(value.unchecked_ref())) } else { Err("is not an object".into()) }
    }

    /// A field by its name; one that is not there is an error but for an [`Option`].
    pub(crate) fn get<T: FromPage>(&self, name: &'static str) -> Result<T, Fault> {
        T::from_page(&self.value(name)).map_err(|fault| named(name, &fault))
    }

    fn value(&self, name: &'static str) -> JsValue {
        NAMES.with_borrow_mut(|names| {
            let known = names.iter().position(|(known, _)| std::ptr::eq(*known, name)).unwrap_or_else(|| {
                names.push((name, name.into()));
                names.len() - 1
            });
            self.0.field(&names[known].1)
        })
    }
}

fn named(name: &str, fault: &str) -> Fault {
    format!("{name} {fault}")
}

fn list(value: &JsValue) -> Result<Array, Fault> {
    if let Some(list) = value.dyn_ref::<Array>() {
        Ok(list.clone())
    } else if ArrayBuffer::is_view(value) {
        Ok(Array::from(value))
    } else {
        Err("is not a list".into())
    }
}

fn list_of(value: &JsValue, length: u32) -> Result<Array, Fault> {
    let list = list(value)?;
    if list.length() == length {
        Ok(list)
    } else {
        Err(format!("holds {} values, not {length}", list.length()))
    }
}

fn number(value: &JsValue) -> Result<f64, Fault> {
    value.as_f64().ok_or_else(|| "is not a number".into())
}

fn whole(value: &JsValue, most: u32) -> Result<u32, Fault> {
    let number = number(value)?;
    if number.fract() == 0.0 && (0.0..=f64::from(most)).contains(&number) {
        Ok(number as u32)
    } else {
        Err(format!("is not a whole number from 0 to {most}"))
    }
}

impl FromPage for f64 {
    fn from_page(value: &JsValue) -> Result<Self, Fault> {
        number(value)
    }
}

impl FromPage for f32 {
    fn from_page(value: &JsValue) -> Result<Self, Fault> {
        number(value).map(|number| number as Self)
    }
}

impl FromPage for u16 {
    fn from_page(value: &JsValue) -> Result<Self, Fault> {
        whole(value, Self::MAX.into()).map(|whole| whole as Self)
    }
}

impl FromPage for usize {
    fn from_page(value: &JsValue) -> Result<Self, Fault> {
        whole(value, u32::MAX).map(|whole| whole as Self)
    }
}

impl FromPage for bool {
    fn from_page(value: &JsValue) -> Result<Self, Fault> {
        value.as_bool().ok_or_else(|| "is neither true nor false".into())
    }
}

impl FromPage for String {
    fn from_page(value: &JsValue) -> Result<Self, Fault> {
        value.as_string().ok_or_else(|| "is not text".into())
    }
}

impl<T: FromPage> FromPage for Option<T> {
    fn from_page(value: &JsValue) -> Result<Self, Fault> {
        if value.is_undefined() || value.is_null() { Ok(None) } else { T::from_page(value).map(Some) }
    }
}

impl<T: FromPage> FromPage for Vec<T> {
    fn from_page(value: &JsValue) -> Result<Self, Fault> {
        let list = list(value)?;
        let mut found = Self::with_capacity(list.length() as usize);
        for i in 0..list.length() {
            found.push(T::from_page(&list.get(i))?);
        }
        Ok(found)
    }
}

impl<T: FromPage, const N: usize> FromPage for [T; N] {
    fn from_page(value: &JsValue) -> Result<Self, Fault> {
        let list = list_of(value, N as u32)?;
        let found = (0..N as u32).map(|i| T::from_page(&list.get(i))).collect::<Result<Vec<T>, _>>()?;
        found.try_into().map_err(|_| "is not a list".into())
    }
}

impl<A: FromPage, B: FromPage, C: FromPage> FromPage for (A, B, C) {
    fn from_page(value: &JsValue) -> Result<Self, Fault> {
        let list = list_of(value, 3)?;
        let [a, b, c] = [0, 1, 2].map(|i| list.get(i));
        Ok((A::from_page(&a)?, B::from_page(&b)?, C::from_page(&c)?))
    }
}

impl<A: FromPage, B: FromPage> FromPage for (A, B) {
    fn from_page(value: &JsValue) -> Result<Self, Fault> {
        let list = list_of(value, 2)?;
        Ok((A::from_page(&list.get(0))?, B::from_page(&list.get(1))?))
    }
}
