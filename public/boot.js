// What has to work when the app itself does not: the service worker and its updates, a start that
// failed, and a way to save everything when the page has ended. No dependencies, both languages.
(() => {
  const french = () => (document.documentElement.lang || navigator.language || "en").startsWith("fr");
  const say = (en, fr) => (french() ? fr : en);

  // ---- a panel over everything ----
  const panel = (title, text, buttons) => {
    if (document.getElementById("ended")) return;
    const box = document.createElement("div");
    box.id = "ended";
    box.setAttribute("role", "alertdialog");
    box.setAttribute("aria-label", title);
    const add = (tag, words) => {
      const e = document.createElement(tag);
      e.textContent = words;
      box.append(e);
      return e;
    };
    add("h2", title);
    add("p", text);
    for (const [words, act] of buttons) {
      const b = add("button", words);
      b.type = "button";
      b.addEventListener("click", act);
    }
    (document.body || document.documentElement).append(box);
    box.querySelector("button").focus();
  };

  // ---- everything that is kept here, as a file that the crew's page opens again ----
  const everything = () => new Promise((done) => {
    const out = { shortfall_records: 3, crew: [], records: [], kept: {}, set_up: {} };
    for (const store of [localStorage, sessionStorage]) {
      try {
        for (let i = 0; i < store.length; i += 1) {
          const k = store.key(i);
          if (k.startsWith("shortfall.")) out.set_up[k] ??= store.getItem(k);
        }
      } catch { /* storage is off */ }
    }
    let request;
    try { request = indexedDB.open("shortfall", 1); } catch { return done(out); }
    request.onerror = () => done(out);
    request.onupgradeneeded = () => request.transaction.abort();
    request.onsuccess = () => {
      const db = request.result;
      try {
        const t = db.transaction(["records", "kept"], "readonly");
        const read = (text) => { try { return JSON.parse(text); } catch { return text; } };
        t.objectStore("records").getAll().onsuccess = (e) => { out.records = e.target.result.map(read); };
        t.objectStore("kept").openCursor().onsuccess = (e) => {
          const c = e.target.result;
          if (!c) return;
          if (c.key === "crew") out.crew = read(c.value); else out.kept[c.key] = read(c.value);
          c.continue();
        };
        t.oncomplete = () => { db.close(); done(out); };
        t.onabort = () => { db.close(); done(out); };
      } catch { db.close(); done(out); }
    };
  });
  const save = async () => {
    const blob = new Blob([JSON.stringify(await everything())], { type: "application/json" });
    const a = document.createElement("a");
    a.href = URL.createObjectURL(blob);
    a.download = "shortfall-everything.json";
    a.click();
    setTimeout(() => URL.revokeObjectURL(a.href), 10000);
  };
  const saveButton = () => [say("Save everything to a file", "Tout enregistrer dans un fichier"), save];

  // The app calls this from its panic hook.
  window.shortfallEnded = () => panel(
    say("Something went wrong in this page", "Un problème est survenu dans cette page"),
    say("What you kept is still on this device. Save it to a file if you like, then reload.",
      "Ce que vous avez gardé est toujours sur cet appareil. Enregistrez-le si vous voulez, puis rechargez."),
    [[say("Reload", "Recharger"), () => location.reload()], saveButton()],
  );

  // ---- a start that failed: a file missing, cut off or of another version ----
  const anew = async (quiet) => {
    try {
      for (const k of await caches.keys()) if (k.startsWith("shortfall-")) await caches.delete(k);
      for (const r of await navigator.serviceWorker.getRegistrations()) await r.unregister();
    } catch { /* neither is there */ }
    // Past what the browser itself has kept of the page.
    try { await fetch(location.pathname, { cache: "reload" }); } catch { return quiet === true ? failed() : undefined; }
    location.reload();
  };
  const failed = () => {
    if (!document.getElementById("shell")) return;
    // Once by itself: an old page beside new files is mended by a page that is fetched anew.
    let tried = true;
    try { tried = sessionStorage.getItem("shortfall-anew") || (sessionStorage.setItem("shortfall-anew", "1"), false); } catch { /* off */ }
    if (!tried && navigator.onLine) return anew(true);
    document.getElementById("ended")?.remove();
    panel(
      say("Shortfall could not be loaded", "Shortfall n’a pas pu être chargé"),
      say("A part of it is missing or damaged. What you made is kept on this device. With a network, fetch it anew.",
        "Une partie manque ou est abîmée. Ce que vous avez fait est conservé. Avec un réseau, chargez-la de nouveau."),
      [[say("Fetch it anew", "Charger de nouveau"), anew], saveButton()],
    );
  };
  addEventListener("error", failed, true);
  addEventListener("unhandledrejection", failed);
  setTimeout(failed, 45000);

  // ---- offline, and a new version ----
  if (!("serviceWorker" in navigator) || !/^https?:$/.test(location.protocol)) return;
  let asked = false;
  const ready = (worker) => {
    window.shortfallUpdate = () => { asked = true; worker.postMessage("take over"); };
    dispatchEvent(new Event("shortfall-update"));
  };
  navigator.serviceWorker.addEventListener("controllerchange", () => { if (asked) location.reload(); });
  addEventListener("load", async () => {
    try {
      const r = await navigator.serviceWorker.register("./sw.js", { updateViaCache: "none" });
      const watch = (w) => w && w.addEventListener("statechange", () => {
        if (w.state === "installed" && navigator.serviceWorker.controller) ready(w);
      });
      if (r.waiting && navigator.serviceWorker.controller) ready(r.waiting);
      watch(r.installing);
      r.addEventListener("updatefound", () => watch(r.installing));
      addEventListener("online", () => r.update().catch(() => {}));
    } catch { /* no network, or a browser that will not: the page works as long as it is open */ }
  });
})();
