// What the pages do more with script than without: files dropped on their frame, validity while typing, a cursor on
// traces. Every form works without any of it.

/** Files dropped on a drop frame become the chosen files of its input; a dropped folder is walked through. */
function dropFiles(zone) {
  const input = zone.querySelector("input[data-drop]");
  const chosen = zone.querySelector("[data-chosen]");
  const tell = () => {
    const names = Array.from(input.files, (file) => file.name);
    chosen.textContent = names.length === 0 ? "none chosen" : names.length === 1 ? names[0] : `${names.length} files`;
  };
  input.addEventListener("change", tell);
  tell();
  zone.addEventListener("dragover", (event) => {
    event.preventDefault();
    zone.classList.add("over");
  });
  zone.addEventListener("dragleave", () => zone.classList.remove("over"));
  zone.addEventListener("drop", async (event) => {
    event.preventDefault();
    zone.classList.remove("over");
    const entries = Array.from(event.dataTransfer.items, (item) => item.webkitGetAsEntry?.()).filter(Boolean);
    const files = entries.length > 0 ? await filesOf(entries) : Array.from(event.dataTransfer.files);
    const all = new DataTransfer();
    files.forEach((file) => all.items.add(file));
    input.files = all.files;
    tell();
  });
}

/** Every file below the dropped entries. */
async function filesOf(entries) {
  const found = [];
  for (const entry of entries) {
    if (entry.isFile) {
      found.push(await new Promise((take, fail) => entry.file(take, fail)));
    } else {
      const reader = entry.createReader();
      // A reader gives a folder's entries in portions, and an empty portion at the end.
      for (;;) {
        const portion = await new Promise((take, fail) => reader.readEntries(take, fail));
        if (portion.length === 0) break;
        found.push(...(await filesOf(portion)));
      }
    }
  }
  return found;
}

/** Asks, while somebody types, whether the run can count, and shows the answer where the form shows it. */
function tellWhileTyping(form) {
  const place = form.querySelector("#told");
  let waiting = 0;
  let asked = 0;
  const ask = async () => {
    const mine = ++asked;
    try {
      const answer = await fetch(form.dataset.told, { method: "POST", body: new URLSearchParams(new FormData(form)) });
      if (answer.ok && mine === asked) place.innerHTML = await answer.text();
    } catch {
      // Without the program's answer the form still tells when the run is kept.
    }
  };
  form.addEventListener("input", () => {
    clearTimeout(waiting);
    waiting = setTimeout(ask, 200);
    showWhatApplies(form);
  });
  showWhatApplies(form);
}

/** Shows the readings that the chosen variant asks for, and the causes only for a void run. */
function showWhatApplies(form) {
  for (const cell of form.querySelectorAll("[data-when]")) {
    const applies = cell.dataset.when.split(" ").every((term) => {
      const [key, value] = term.split("=");
      const chosen = form.querySelector(`[name="variant.${key}"]:checked`);
      return !chosen || chosen.value === value;
    });
    cell.hidden = !applies;
  }
  const isVoid = form.querySelector('[name="state"]:checked')?.value === "void";
  form.querySelector(".void-part").hidden = !isVoid;
}

/** Left and right move a cursor along a trace's samples; the reading is spoken. */
function traceCursor(figure) {
  const plots = Array.from(figure.querySelectorAll("svg.plot"));
  const spoken = document.createElement("output");
  spoken.className = "trace-reading";
  spoken.textContent = "Left and right move along the samples.";
  figure.append(spoken);
  figure.tabIndex = 0;
  figure.setAttribute("role", "group");
  figure.setAttribute("aria-label", "Trace; left and right arrow move along the samples");
  let at = -1;
  const show = (step) => {
    const plot = plots.find((one) => one.getClientRects().length > 0);
    const samples = plot ? Array.from(plot.querySelectorAll("circle.sample")) : [];
    if (samples.length === 0) return;
    at = Math.min(samples.length - 1, Math.max(0, at + step));
    samples.forEach((one, i) => one.classList.toggle("at", i === at));
    spoken.textContent = `Sample ${at + 1} of ${samples.length}: ${samples[at].dataset.says ?? ""}`;
  };
  figure.addEventListener("keydown", (event) => {
    if (event.key !== "ArrowLeft" && event.key !== "ArrowRight") return;
    event.preventDefault();
    show(event.key === "ArrowRight" ? 1 : -1);
  });
}

document.querySelectorAll("form.drop").forEach(dropFiles);
document.querySelectorAll("form[data-told]").forEach(tellWhileTyping);
document.querySelectorAll("[data-trace]").forEach(traceCursor);
document
  .querySelector('.masthead-places [aria-current="page"]')
  ?.scrollIntoView({ block: "nearest", inline: "center" });
