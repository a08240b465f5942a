// What the pages do more with script than without: validity while typing, a cursor on traces, drawings with the page's
// own type and links. Every form works without any of it.

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

/**
 * A drawing that came as a picture becomes part of the page once it was fetched: with its type, its colours and links
 * to its runs. The browser decides when the picture is wanted.
 */
async function inline(picture) {
  const answer = await fetch(`${picture.currentSrc}&links=true`);
  if (!answer.ok) return;
  const read = new DOMParser().parseFromString(await answer.text(), "image/svg+xml").documentElement;
  if (read.localName !== "svg") return;
  read.querySelectorAll("style, script").forEach((one) => one.remove());
  // The list beside it leads to the same runs, one stop of the keyboard each.
  read.querySelectorAll("a").forEach((one) => one.setAttribute("tabindex", "-1"));
  (picture.closest("picture") ?? picture).replaceWith(document.importNode(read, true));
}

for (const picture of document.querySelectorAll("img[data-inline]")) {
  if (picture.complete && picture.naturalWidth > 0) inline(picture);
  else picture.addEventListener("load", () => inline(picture), { once: true });
}

/** Copies the words of one sentence, and says so on the button for a moment. */
function copyWords(button) {
  button.hidden = false;
  button.addEventListener("click", async () => {
    const place = document.getElementById(button.dataset.copy);
    const words = (place.querySelector("[data-words]") ?? place).textContent.replace(/\s+/g, " ").trim();
    try {
      await navigator.clipboard.writeText(words);
      button.textContent = "Copied";
    } catch {
      // The page has no clipboard: the sentence is marked, so that the keys for copying do it.
      getSelection().selectAllChildren(place.querySelector("[data-words]") ?? place);
      button.textContent = "Marked";
    }
    setTimeout(() => (button.textContent = "Copy"), 2000);
  });
}

document.querySelectorAll("[data-copy]").forEach(copyWords);
document.querySelectorAll("form[data-told]").forEach(tellWhileTyping);
document.querySelectorAll("[data-trace]").forEach(traceCursor);
document
  .querySelector('.masthead-places [aria-current="page"]')
  ?.scrollIntoView({ block: "nearest", inline: "center" });
