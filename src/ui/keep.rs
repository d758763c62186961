//! What the quiz keeps on the device: records, the crew's list and forms half done, in IndexedDB.
//! Every function says whether it worked; nothing is lost in silence.

use idb::{Database, DatabaseEvent, Error, Factory, ObjectStoreParams, Query, TransactionMode};
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

async fn write(shelf: Shelf, key: &str, text: Option<&str>) -> Result<(), Error> {
    let db = open().await?;
    let t = db.transaction(&[shelf.name()], TransactionMode::ReadWrite)?;
    let store = t.object_store(shelf.name())?;
    let key = JsValue::from_str(key);
    match text {
        Some(text) => drop(store.put(&JsValue::from_str(text), Some(&key))?.await?),
        None => store.delete(Query::Key(key))?.await?,
    }
    t.commit()?.await?;
    db.close();
    Ok(())
}

/// Keeps a text; false when the device would not.
pub async fn put(shelf: Shelf, key: &str, text: &str) -> bool {
    write(shelf, key, Some(text)).await.is_ok()
}

/// Lets go of a text.
pub async fn remove(shelf: Shelf, key: &str) -> bool {
    write(shelf, key, None).await.is_ok()
}

async fn read(shelf: Shelf) -> Result<Vec<(String, String)>, Error> {
    let db = open().await?;
    let t = db.transaction(&[shelf.name()], TransactionMode::ReadOnly)?;
    let store = t.object_store(shelf.name())?;
    let keys = store.get_all_keys(None, None)?.await?;
    let texts = store.get_all(None, None)?.await?;
    t.await?;
    db.close();
    Ok(keys.iter().zip(&texts).filter_map(|(k, v)| Some((k.as_string()?, v.as_string()?))).collect())
}

/// Everything on a shelf; none when the device keeps nothing (private browsing, storage off).
pub async fn all(shelf: Shelf) -> Option<Vec<(String, String)>> {
    read(shelf).await.ok()
}

/// One text.
pub async fn get(shelf: Shelf, key: &str) -> Option<String> {
    all(shelf).await?.into_iter().find(|(k, _)| k == key).map(|(_, v)| v)
}

/// Empties every shelf.
pub async fn clear() -> bool {
    let emptied = async {
        let db = open().await?;
        let t = db.transaction(&STORES, TransactionMode::ReadWrite)?;
        for store in STORES {
            t.object_store(store)?.clear()?.await?;
        }
        t.commit()?.await?;
        db.close();
        Ok::<(), Error>(())
    };
    emptied.await.is_ok()
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
