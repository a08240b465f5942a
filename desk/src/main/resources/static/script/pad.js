// Keys of our own for lengths on a phone: figures, a half, feet and inches, which no phone's keypad has on one face.
// Where there is a mouse or no script, the field is typed into as any other.

const KEYS = ["7", "8", "9", "ft", "4", "5", "6", "in", "1", "2", "3", "½", ".", "0", "rub out", "next"];
const UNITS = new Set(["ft", "in"]);

/** The text with one more key pressed. */
function pressed(text, key) {
  if (key === "rub out") return text.replace(/(\s*(ft|in)\s*|.)$/u, "");
  if (UNITS.has(key)) return text.trim() === "" ? text : `${text.trimEnd()} ${key} `;
  return text + key;
}

/** The pad of one form, shown under the reading that is being typed. */
function pad(form) {
  const keys = document.createElement("div");
  keys.className = "pad";
  keys.setAttribute("role", "group");
  keys.setAttribute("aria-label", "Keys for lengths");
  let field = null;
  for (const key of KEYS) {
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = key;
    if (key.length > 1) button.className = "word";
    // The field keeps the focus, so that a reader of the screen stays where the text is.
    button.addEventListener("pointerdown", (event) => event.preventDefault());
    button.addEventListener("click", () => {
      if (!field) return;
      if (key === "next") return next(field);
      field.value = pressed(field.value, key);
      field.dispatchEvent(new Event("input", { bubbles: true }));
    });
    keys.append(button);
  }
  const next = (from) => {
    const fields = Array.from(form.querySelectorAll(".readings input")).filter((one) => one.checkVisibility());
    const after = fields[fields.indexOf(from) + 1];
    if (after) after.focus();
    else from.blur();
  };
  form.addEventListener("focusin", (event) => {
    field = event.target.matches("input[data-pad]") ? event.target : null;
    if (field) field.closest(".readings").after(keys);
    else if (!keys.contains(event.target)) keys.remove();
  });
}

if (window.matchMedia("(pointer: coarse)").matches) {
  document.querySelectorAll("form[data-told]").forEach((form) => {
    form.querySelectorAll("input[data-pad]").forEach((one) => one.setAttribute("inputmode", "none"));
    pad(form);
  });
}
