// What the run sheet keeps on this phone: the text that is being typed, and runs that could not be sent. Without script
// the form is sent as any other.

const UNSENT = "measured-mile unsent";
const TYPED = "measured-mile typed ";
const AGAIN_MS = 20_000;
const PATIENCE_MS = 8_000;

/** A list or a set of fields kept in this browser; the other value where it keeps nothing or forbids it. */
function kept(key, otherwise) {
  try {
    return JSON.parse(localStorage.getItem(key)) ?? otherwise;
  } catch {
    return otherwise;
  }
}

/** Whether the browser kept it. */
function keep(key, value) {
  try {
    if (value === null) localStorage.removeItem(key);
    else localStorage.setItem(key, JSON.stringify(value));
    return true;
  } catch {
    return false;
  }
}

/** The fields of a form but its token, which belongs to the page. */
function fieldsOf(form) {
  return Array.from(new FormData(form)).filter(([name]) => name !== "_csrf");
}

/** Sends fields with this page's token: "kept", "refused", or "unsent" when nobody answered. */
async function send(path, fields, token) {
  const body = new URLSearchParams(fields);
  body.set("_csrf", token);
  try {
    const answer = await fetch(path, { method: "POST", body, signal: AbortSignal.timeout(PATIENCE_MS) });
    if (answer.redirected) return { became: "kept", url: answer.url };
    return { became: answer.status >= 500 ? "unsent" : "refused" };
  } catch {
    return { became: "unsent" };
  }
}

/** Text that was typed and not sent comes back when the sheet is opened again. */
function keepTyped(form, path) {
  const isEmpty = () => Array.from(form.querySelectorAll(".readings input"), (one) => one.value).every((one) => !one);
  const before = kept(TYPED + path, []);
  if (before.length > 0 && isEmpty()) {
    for (const [name, value] of before) {
      for (const control of form.querySelectorAll(`[name="${CSS.escape(name)}"]`)) {
        if (control.type === "radio") control.checked = control.value === value;
        else control.value = value;
      }
    }
    form.dispatchEvent(new Event("input"));
  }
  form.addEventListener("input", () => keep(TYPED + path, isEmpty() ? null : fieldsOf(form)));
}

/** How many runs wait on this phone, and how to look at one that was not taken. */
function show(place, allSent) {
  const unsent = kept(UNSENT, []);
  const waiting = unsent.filter((one) => !one.refused);
  const refused = unsent.filter((one) => one.refused);
  place.replaceChildren();
  if (waiting.length > 0) {
    const count = document.createElement("b");
    count.textContent = `${waiting.length} unsent`;
    const why = document.createElement("span");
    why.textContent = "no signal; kept here";
    place.append(count, why);
  }
  refused.forEach((one) => {
    const look = document.createElement("button");
    look.type = "button";
    look.className = "act";
    look.textContent = "A run typed here was not taken: look at it";
    look.addEventListener("click", () => {
      keep(TYPED + one.path, one.fields.filter(([name]) => name !== "typedAt"));
      keep(UNSENT, kept(UNSENT, []).filter((other) => other.id !== one.id));
      location.assign(one.path);
    });
    place.append(look);
  });
  if (unsent.length === 0 && allSent) {
    const time = new Date().toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" });
    const told = document.createElement("span");
    told.textContent = `all sent ${time}`;
    const again = document.createElement("a");
    again.href = location.pathname;
    again.className = "act";
    again.textContent = "Load the sheet again";
    place.append(told, again);
  }
  place.hidden = place.childElementCount === 0;
}

/** Sends what waits, one after the other, and stops at the first that nobody answers. */
async function sendWaiting(place, token) {
  let sent = 0;
  for (const one of kept(UNSENT, []).filter((other) => !other.refused)) {
    const { became } = await send(one.path, one.fields, token);
    if (became === "unsent") break;
    const now = kept(UNSENT, []);
    keep(
      UNSENT,
      became === "kept"
        ? now.filter((other) => other.id !== one.id)
        : now.map((other) => (other.id === one.id ? { ...other, refused: true } : other)),
    );
    sent += became === "kept" ? 1 : 0;
  }
  if (sent > 0 || kept(UNSENT, []).length > 0) show(place, sent > 0);
}

/** Keeps a run when it cannot be sent, and clears the form for the next. */
function keepRuns(form, path, place) {
  const token = () => form.querySelector('[name="_csrf"]').value;
  form.addEventListener("submit", async (event) => {
    if (event.submitter?.name === "act") return;
    event.preventDefault();
    const fields = [...fieldsOf(form), ["typedAt", new Date().toISOString()]];
    const { became, url } = await send(path, fields, token());
    if (became === "kept") {
      keep(TYPED + path, null);
      if (location.href === `${url}#kept`) location.reload();
      else location.assign(`${url}#kept`);
    } else if (became === "refused") {
      // Sent once more as a browser does, so that its page shows each fault beside its field.
      form.submit();
    } else if (keep(UNSENT, [...kept(UNSENT, []), { id: `${Date.now()} ${Math.random()}`, path, fields }])) {
      form.querySelectorAll('.readings input, [name="note"], [name="other"]').forEach((one) => {
        one.value = "";
      });
      keep(TYPED + path, null);
      show(place, false);
      place.scrollIntoView({ block: "nearest" });
    } else {
      form.submit();
    }
  });
  const again = () => {
    if (kept(UNSENT, []).some((one) => !one.refused)) sendWaiting(place, token());
  };
  window.addEventListener("online", again);
  setInterval(again, AGAIN_MS);
  show(place, false);
  again();
}

document.querySelectorAll("form[data-told]").forEach((form) => {
  const path = new URL(form.action).pathname;
  keepTyped(form, path);
  keepRuns(form, path, document.querySelector("[data-unsent]"));
});
