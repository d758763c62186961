//! What the quiz keeps on the device: records, the crew's list and forms half done, in IndexedDB.
//!
//! Every change is one transaction, so that two tabs cannot lose each other's, and every function says
//! whether it was committed: a full disc shows only there, as an abort after every request had worked.

use idb::{Database, DatabaseEvent, Error, Factory, ObjectStoreParams, Query, Transaction};
use idb::{TransactionMode, TransactionResult};
use leptos::prelude::window;
use wasm_bindgen::JsValue;

const NAME: &str = "shortfall";
const STORES: [&str; 2] = ["records", "kept"];

/// Where a thing is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shelf {
    /// Finished records, by identifier.
    Records,
    /// Everything else, by name.
    Kept,
}

impl Shelf {
    fn name(self) -> &'static str {
        STORES[self as usize]
    }
}

async fn open() -> Result<Database, Error> {
    let mut request = Factory::new()?.open(NAME, Some(1))?;
    request.on_upgrade_needed(|event| {
        if let Ok(db) = event.database() {
            for store in STORES {
                if !db.store_names().iter().any(|n| n == store) {
                    let _ = db.create_object_store(store, ObjectStoreParams::new());
                }
            }
        }
    });
    request.await
}

async fn get_in(t: &Transaction, shelf: Shelf, key: &str) -> Result<Option<String>, Error> {
    let found = t.object_store(shelf.name())?.get(Query::Key(JsValue::from_str(key)))?.await?;
    Ok(found.and_then(|v| v.as_string()))
}

async fn put_in(t: &Transaction, shelf: Shelf, key: &str, text: Option<&str>) -> Result<(), Error> {
    let store = t.object_store(shelf.name())?;
    let key = JsValue::from_str(key);
    match text {
        Some(text) => drop(store.put(&JsValue::from_str(text), Some(&key))?.await?),
        None => store.delete(Query::Key(key))?.await?,
    }
    Ok(())
}

/// Runs `work` in one transaction over everything; `None` unless the browser committed it.
async fn transact<T>(work: impl AsyncFnOnce(&Transaction) -> Result<T, Error>) -> Option<T> {
    let db = open().await.ok()?;
    let done = async {
        let t = db.transaction(&STORES, TransactionMode::ReadWrite)?;
        let out = work(&t).await?;
        Ok::<_, Error>((out, t.commit()?.await?))
    };
    let done = done.await;
    db.close();
    match done {
        Ok((out, TransactionResult::Committed)) => Some(out),
        _ => None,
    }
}

/// Keeps texts, all of them or none; false when the device would not.
pub async fn put_all(shelf: Shelf, all: &[(String, String)]) -> bool {
    let work = async |t: &Transaction| {
        for (key, text) in all {
            put_in(t, shelf, key, Some(text)).await?;
        }
        Ok(())
    };
    transact(work).await.is_some()
}

/// Keeps a text; false when the device would not.
pub async fn put(shelf: Shelf, key: &str, text: &str) -> bool {
    put_all(shelf, &[(key.to_owned(), text.to_owned())]).await
}

/// Lets go of a text.
pub async fn remove(shelf: Shelf, key: &str) -> bool {
    transact(async |t: &Transaction| put_in(t, shelf, key, None).await).await.is_some()
}

/// Makes a new text of the one kept, whatever another tab does meanwhile. `edit` sees what is kept and
/// gives what is to be kept instead (`None`: as it is) and what the caller wants to know.
pub async fn change<T>(
    shelf: Shelf,
    key: &str,
    edit: impl FnOnce(Option<String>) -> (Option<String>, T),
) -> Option<T> {
    let work = async |t: &Transaction| {
        let (text, out) = edit(get_in(t, shelf, key).await?);
        if let Some(text) = text {
            put_in(t, shelf, key, Some(&text)).await?;
        }
        Ok(out)
    };
    transact(work).await
}

/// How the end of a form was kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ended {
    /// The record is kept and the half let go.
    Kept,
    /// The half is gone: another tab has ended the form. Nothing was written.
    Elsewhere,
    /// The device would not.
    NotKept,
}

/// Keeps a record in place of the form half done that it came of, in one piece. With `was_kept` the
/// half has to be there: one sitting is one record.
pub async fn end_form(half: &str, was_kept: bool, id: &str, record: &str) -> Ended {
    let work = async |t: &Transaction| {
        if was_kept && get_in(t, Shelf::Kept, half).await?.is_none() {
            return Ok(Ended::Elsewhere);
        }
        put_in(t, Shelf::Records, id, Some(record)).await?;
        put_in(t, Shelf::Kept, half, None).await?;
        Ok(Ended::Kept)
    };
    transact(work).await.unwrap_or(Ended::NotKept)
}

async fn read(shelf: Shelf) -> Result<Vec<(String, String)>, Error> {
    let db = open().await?;
    let found = async {
        let t = db.transaction(&[shelf.name()], TransactionMode::ReadOnly)?;
        let store = t.object_store(shelf.name())?;
        let keys = store.get_all_keys(None, None)?.await?;
        let texts = store.get_all(None, None)?.await?;
        t.await?;
        Ok::<_, Error>((keys, texts))
    };
    let found = found.await;
    db.close();
    let (keys, texts) = found?;
    Ok(keys.iter().zip(&texts).filter_map(|(k, v)| Some((k.as_string()?, v.as_string()?))).collect())
}

/// Everything on a shelf; none when the device keeps nothing (private browsing, storage off).
pub async fn all(shelf: Shelf) -> Option<Vec<(String, String)>> {
    read(shelf).await.ok()
}

/// Empties every shelf.
pub async fn clear() -> bool {
    let work = async |t: &Transaction| {
        for store in STORES {
            t.object_store(store)?.clear()?.await?;
        }
        Ok(())
    };
    transact(work).await.is_some()
}

/// Asks the browser not to throw away what is kept; whether it promised.
pub async fn persist() -> bool {
    let navigator: JsValue = window().navigator().into();
    if !js_sys::Reflect::has(&navigator, &"storage".into()).unwrap_or(false) {
        return false;
    }
    match window().navigator().storage().persist() {
        Ok(p) => wasm_bindgen_futures::JsFuture::from(p).await.is_ok_and(|v| v.is_truthy()),
        Err(_) => false,
    }
}
