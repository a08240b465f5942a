// The plot on which runs are decided: the run that is chosen has a handle at each end and a cut between them, moved by
// mouse, finger or keys; the view goes closer, wider, earlier, later. Everything ends in the fields of the run's form,
// which can be filled in and sent without any of this.

const NARROWEST = 0.5;

class TraceDesk {
  constructor(root) {
    this.root = root;
    this.svg = root.dataset.svg;
    this.span = Number(root.dataset.span);
    this.step = Number(root.dataset.step);
    this.start = root.dataset.start === "" ? null : Number(root.dataset.start);
    this.view = { from: Number(root.dataset.from), to: Number(root.dataset.to) };
    this.details = Array.from(root.querySelectorAll("details[data-run]"));
    this.clock = new Intl.DateTimeFormat("en-GB", {
      timeZone: root.dataset.zone,
      hour: "2-digit", minute: "2-digit", second: "2-digit", fractionalSecondDigits: 2, hourCycle: "h23",
    });
    this.said = root.querySelector("[data-said]");
    this.build(root.querySelector("figure"));
    this.listen();
    const open = this.details.find((one) => one.open);
    this.draw().then(() => (open ? this.choose(open, false) : this.place()));
  }

  build(figure) {
    const make = (css, attributes = {}) => {
      const made = document.createElement("div");
      made.className = css;
      Object.entries(attributes).forEach(([name, value]) => made.setAttribute(name, value));
      return made;
    };
    this.stage = make("trace-stage");
    this.drawing = make("trace-drawing");
    const slider = (css) => make(`trace-handle ${css}`, { role: "slider", tabindex: "0" });
    this.shade = make("trace-shade");
    this.handles = { from: slider("at-from"), to: slider("at-to"), at: slider("at-cut") };
    this.stage.append(this.drawing, this.shade, ...Object.values(this.handles));
    figure.querySelectorAll(".for-wide, .for-phone").forEach((one) => one.remove());
    figure.prepend(this.stage);
    Object.entries(this.handles).forEach(([end, handle]) => this.listenTo(end, handle));
  }

  listen() {
    this.drawing.addEventListener("click", (event) => {
      const band = event.target.closest("a[data-run]");
      if (!band) return;
      event.preventDefault();
      this.choose(this.find(band.dataset.run), true);
    });
    this.drawing.addEventListener("focusin", (event) => {
      const band = event.target.closest("a[data-run]");
      if (band && band.dataset.run !== this.chosen?.dataset.run) this.choose(this.find(band.dataset.run), false);
    });
    this.stage.addEventListener("keydown", (event) => this.keys(event));
    this.stage.addEventListener("wheel", (event) => this.wheel(event), { passive: false });
    new Pointers(this);
    this.root.querySelectorAll("[data-go]").forEach((link) =>
      link.addEventListener("click", (event) => {
        event.preventDefault();
        this.go(link.dataset.go);
      }));
    for (const one of this.details) {
      one.addEventListener("toggle", () => {
        if (one.open && one !== this.chosen) this.choose(one, true);
        if (!one.open && one === this.chosen) this.choose(null, false);
      });
      one.addEventListener("input", () => one === this.chosen && this.place());
    }
    this.root.querySelector("[data-add]").addEventListener("click", (event) => {
      event.preventDefault();
      const wide = this.view.to - this.view.from;
      this.mark(this.view.from + 0.4 * wide, this.view.from + 0.6 * wide);
      this.handles.from.focus();
    });
    const trial = this.root.querySelector("[name=trial]");
    const showTrial = () =>
      this.root.querySelectorAll("[data-trial]").forEach((one) => (one.hidden = one.dataset.trial !== trial.value));
    trial.addEventListener("change", showTrial);
    showTrial();
    let waiting = 0;
    new ResizeObserver(() => {
      clearTimeout(waiting);
      waiting = setTimeout(() => this.stage.clientWidth !== this.drawnWidth && this.draw(), 150);
    }).observe(this.stage);
  }

  find(run) {
    return this.details.find((one) => one.dataset.run === run) ?? null;
  }

  /** The shortest run that a time lies in. */
  runAt(seconds) {
    const ends = (one) => ["from", "to"].map((end) => Number(one.querySelector(`[name="${end}"]`).value));
    const length = (one) => ends(one)[1] - ends(one)[0];
    return this.details
      .filter((one) => one.dataset.run !== "" && ends(one)[0] <= seconds && seconds <= ends(one)[1])
      .sort((a, b) => length(a) - length(b))[0];
  }

  field(end) {
    return this.chosen.querySelector(`[name="${end}"]`);
  }

  value(end) {
    const typed = Number(this.field(end).value.replace(",", "."));
    return Number.isFinite(typed) ? typed : 0;
  }

  /** A run becomes the one that the handles move; null for none. */
  choose(details, closer) {
    this.chosen = details;
    this.details.forEach((one) => (one.open = one === details));
    if (details) {
      if (this.field("from").value === "") this.mark(this.view.from, this.view.to);
      const [from, to] = [this.value("from"), this.value("to")];
      const seen = ((to - from) / (this.view.to - this.view.from)) * this.stage.clientWidth;
      if (to < this.view.from || from > this.view.to || (closer && (seen < 130 || seen > this.stage.clientWidth))) {
        const room = Math.max(to - from, 20 * this.step, NARROWEST);
        this.show(from - room, to + room);
      }
      this.said.textContent = `${details.querySelector("[data-name]").textContent}: ${this.words(from)} to
        ${this.words(to)}. Its ends and the cut can be moved.`;
    }
    this.place();
  }

  /** Begins a new run over a stretch. */
  mark(from, to) {
    const fresh = this.find("");
    this.chosen = fresh;
    this.field("from").value = Math.max(0, from).toFixed(3);
    this.field("to").value = Math.min(this.span, to).toFixed(3);
    this.choose(fresh, false);
  }

  words(seconds) {
    const plain = `${seconds.toFixed(2)} s`;
    return this.start === null ? plain : `${plain}, ${this.clock.format(this.start + 1000 * seconds)}`;
  }

  show(from, to) {
    const wide = Math.min(this.span, Math.max(to - from, Math.max(NARROWEST, 4 * this.step)));
    const begin = Math.min(Math.max(0, (from + to - wide) / 2), this.span - wide);
    this.view = { from: begin, to: begin + wide };
    this.place();
    return this.draw();
  }

  go(where, about = (this.view.from + this.view.to) / 2) {
    const { from, to } = this.view;
    const wide = to - from;
    const scaled = (by) => this.show(about - (about - from) * by, about + (to - about) * by);
    if (where === "closer") scaled(0.5);
    else if (where === "wider") scaled(2);
    else if (where === "earlier") this.show(from - wide / 2, to - wide / 2);
    else if (where === "later") this.show(from + wide / 2, to + wide / 2);
    else this.show(0, this.span);
  }

  /** Fetches the drawing of the view; of views asked for meanwhile, the last. */
  async draw() {
    this.stale = true;
    if (this.busy) return;
    this.busy = true;
    while (this.stale) {
      this.stale = false;
      this.drawnWidth = this.stage.clientWidth;
      const view = { ...this.view };
      const height = this.drawnWidth < 500 ? 200 : 300;
      const asked = `&links=true&w=${this.drawnWidth}&h=${height}&from=${view.from.toFixed(3)}&to=${view.to.toFixed(3)}`;
      try {
        const answer = await fetch(this.svg + asked);
        if (answer.ok) this.put(await answer.text());
      } catch {
        this.said.textContent = "The program did not answer; the drawing is that of the view before.";
      }
    }
    this.busy = false;
  }

  put(text) {
    const read = new DOMParser().parseFromString(text, "image/svg+xml").documentElement;
    const focused = this.drawing.contains(document.activeElement) ? document.activeElement.dataset?.run : null;
    read.querySelectorAll("style").forEach((one) => one.remove());
    const svg = document.importNode(read, true);
    this.drawing.replaceChildren(svg);
    const part = (name) => Number(svg.dataset[name]);
    this.axis = { left: part("left"), right: part("right"), top: part("top"), bottom: part("bottom") };
    this.place();
    if (focused !== null) this.band(focused)?.focus({ preventScroll: true });
  }

  band(run) {
    return Array.from(this.drawing.querySelectorAll("a[data-run]")).find((one) => one.dataset.run === run);
  }

  /** The pixel of a time, from the stage's left edge. */
  at(seconds) {
    const { from, to } = this.view;
    return this.axis.left + ((seconds - from) / (to - from)) * (this.axis.right - this.axis.left);
  }

  /** The time of a pixel of the screen. */
  time(clientX) {
    const x = clientX - this.stage.getBoundingClientRect().left;
    const { from, to } = this.view;
    return from + ((x - this.axis.left) / (this.axis.right - this.axis.left)) * (to - from);
  }

  /** Puts handles and shade where the fields say, and says it to those who do not see them. */
  place() {
    if (!this.axis) return;
    const bands = Array.from(this.drawing.querySelectorAll("a[data-run]"));
    const current = bands.find((one) => one.dataset.run === this.chosen?.dataset.run);
    bands.forEach((one) => {
      one.classList.toggle("current", one === current);
      one.tabIndex = one === (current ?? bands[0]) ? 0 : -1;
    });
    const isChosen = Boolean(this.chosen);
    [this.shade, ...Object.values(this.handles)].forEach((one) => (one.hidden = !isChosen));
    if (!isChosen) return;
    const hasCut = this.field("at") !== null;
    const times = { from: this.value("from"), to: this.value("to") };
    if (hasCut) {
      const cut = this.value("at");
      times.at = cut > times.from && cut < times.to ? cut : (times.from + times.to) / 2;
      this.field("at").value = times.at.toFixed(3);
    }
    this.handles.at.hidden = !hasCut;
    const { left, right, top, bottom } = this.axis;
    for (const [end, seconds] of Object.entries(times)) {
      const handle = this.handles[end];
      const x = this.at(seconds);
      handle.hidden = x < left - 1 || x > right + 1;
      handle.style.left = `${x}px`;
      handle.style.top = `${top}px`;
      handle.style.height = `${bottom - top}px`;
      this.tell(handle, end, seconds, times);
    }
    const from = Math.max(left, this.at(times.from));
    const to = Math.min(right, this.at(times.to));
    this.shade.hidden = to <= from;
    Object.assign(this.shade.style, {
      left: `${from}px`, width: `${Math.max(0, to - from)}px`, top: `${top}px`, height: `${bottom - top}px`,
    });
  }

  tell(handle, end, seconds, times) {
    const name = this.chosen.querySelector("[data-name]").textContent;
    const what = { from: "Start", to: "End", at: "Cut" }[end];
    handle.setAttribute("aria-label", `${what} of ${name}`);
    handle.setAttribute("aria-valuemin", (end === "from" ? 0 : times.from).toFixed(3));
    handle.setAttribute("aria-valuemax", (end === "to" ? this.span : times.to).toFixed(3));
    handle.setAttribute("aria-valuenow", seconds.toFixed(3));
    handle.setAttribute("aria-valuetext", this.words(seconds));
    const beside = this.chosen.querySelector(`[data-clock="${end}"]`);
    if (beside && this.start !== null) beside.textContent = this.clock.format(this.start + 1000 * seconds);
    const length = this.chosen.querySelector("[data-length]");
    if (length) length.textContent = `${(times.to - times.from).toFixed(2)} s`;
  }

  /** Moves one end or the cut, never past its neighbours. */
  move(end, seconds) {
    const least = end === "from" ? 0 : this.value("from") + this.step;
    const most = end === "to" ? this.span : this.value("to") - this.step;
    const set = Math.min(Math.max(seconds, least), Math.max(least, most));
    this.field(end).value = set.toFixed(3);
    this.chosen.classList.toggle("moved", this.isMoved());
    if (set < this.view.from || set > this.view.to) {
      const wide = this.view.to - this.view.from;
      this.show(set - wide / 2, set + wide / 2);
    }
    this.place();
  }

  isMoved() {
    return ["from", "to"].some((end) => this.field(end).value !== this.field(end).defaultValue);
  }

  listenTo(end, handle) {
    handle.addEventListener("pointerdown", (event) => {
      event.preventDefault();
      event.stopPropagation();
      handle.focus();
      handle.setPointerCapture(event.pointerId);
      this.grip = this.at(this.value(end)) - (event.clientX - this.stage.getBoundingClientRect().left);
    });
    handle.addEventListener("pointermove", (event) => {
      if (!handle.hasPointerCapture(event.pointerId)) return;
      // A view that slid away under the pointer would tear the end along with it.
      const { from, to } = this.view;
      this.move(end, Math.min(Math.max(this.time(event.clientX + this.grip), from), to));
    });
    handle.addEventListener("keydown", (event) => this.slide(event, end));
  }

  slide(event, end) {
    const by = this.step * (event.shiftKey ? 10 : 1);
    const now = this.value(end);
    const to = {
      ArrowLeft: now - by, ArrowDown: now - by, ArrowRight: now + by, ArrowUp: now + by,
      PageDown: now - 100 * this.step, PageUp: now + 100 * this.step, Home: 0, End: this.span,
      Escape: end === "at" ? (this.value("from") + this.value("to")) / 2 : Number(this.field(end).defaultValue),
    }[event.key];
    if (to === undefined) {
      this.act(event);
      return;
    }
    event.preventDefault();
    event.stopPropagation();
    this.move(end, to);
  }

  /** Enter keeps, M moves, S splits, R goes to the causes. */
  act(event) {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const key = event.key.toLowerCase();
    const press = (selector) => this.chosen.querySelector(selector)?.click();
    const canConfirm = this.chosen.querySelector("[data-act=confirm]") !== null;
    if (key === "enter") press(canConfirm ? "[data-act=confirm]" : "[data-act=move]");
    else if (key === "m") press("[data-act=move]");
    else if (key === "s") press("[data-act=split]");
    else if (key === "r") this.chosen.querySelector("[name=cause]")?.focus();
    else return;
    event.preventDefault();
  }

  keys(event) {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const zoom = { "+": "closer", "=": "closer", "-": "wider", 0: "whole" }[event.key];
    const band = event.target.closest("a[data-run]");
    const next = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    if (zoom) this.go(zoom, this.chosen ? (this.value("from") + this.value("to")) / 2 : undefined);
    else if (band && next) this.toFellow(band.dataset.run, next);
    else if (band && (event.key === "PageUp" || event.key === "PageDown")) {
      this.go(event.key === "PageUp" ? "earlier" : "later");
    } else return;
    event.preventDefault();
  }

  /** To the run before or after, wherever it lies. */
  async toFellow(run, by) {
    const runs = this.details.filter((one) => one.dataset.run !== "");
    const next = runs[runs.findIndex((one) => one.dataset.run === run) + by];
    if (!next) return;
    this.choose(next, false);
    while (this.busy) await new Promise((soon) => setTimeout(soon, 20));
    this.band(next.dataset.run)?.focus({ preventScroll: true });
  }

  wheel(event) {
    if (event.ctrlKey || event.metaKey) {
      event.preventDefault();
      const about = this.time(event.clientX);
      const by = Math.exp(Math.max(-40, Math.min(40, event.deltaY)) / 60);
      this.show(about - (about - this.view.from) * by, about + (this.view.to - about) * by);
    } else if (event.shiftKey || Math.abs(event.deltaX) > Math.abs(event.deltaY)) {
      event.preventDefault();
      const by = ((event.deltaX || event.deltaY) / this.stage.clientWidth) * (this.view.to - this.view.from);
      this.show(this.view.from + by, this.view.to + by);
    }
  }
}

/** Mouse and fingers on the plot itself: a mouse marks a new run, one finger moves the view, two make it closer. */
class Pointers {
  constructor(desk) {
    this.desk = desk;
    this.down = new Map();
    const stage = desk.stage;
    stage.addEventListener("pointerdown", (event) => this.press(event));
    stage.addEventListener("pointermove", (event) => this.drag(event));
    for (const end of ["pointerup", "pointercancel"]) stage.addEventListener(end, (event) => this.release(event));
  }

  press(event) {
    if (event.target.closest(".trace-handle") || (event.pointerType === "mouse" && event.button !== 0)) return;
    this.down.set(event.pointerId, { x: event.clientX, time: this.desk.time(event.clientX) });
    this.first = { x: event.clientX, time: this.desk.time(event.clientX), band: event.target.closest("a[data-run]") };
    this.marks = event.pointerType === "mouse" && !event.shiftKey && !this.first.band;
    this.hasMoved = false;
  }

  drag(event) {
    const one = this.down.get(event.pointerId);
    if (!one) return;
    one.x = event.clientX;
    if (!this.hasMoved && Math.abs(event.clientX - this.first.x) < 5 && this.down.size === 1) return;
    if (!this.hasMoved) this.desk.stage.setPointerCapture(event.pointerId);
    this.hasMoved = true;
    if (this.down.size > 1) this.pinch();
    else if (this.marks) this.desk.mark(...this.ordered(event.clientX));
    else {
      const by = one.time - this.desk.time(event.clientX);
      this.desk.show(this.desk.view.from + by, this.desk.view.to + by);
    }
  }

  ordered(clientX) {
    const now = this.desk.time(clientX);
    return [Math.min(now, this.first.time), Math.max(now, this.first.time)];
  }

  /** The times under both fingers stay under them. */
  pinch() {
    const [a, b] = Array.from(this.down.values());
    if (Math.abs(a.x - b.x) < 10 || a.time === b.time) return;
    const { left, right } = this.desk.axis;
    const perPixel = (b.time - a.time) / (b.x - a.x);
    if (perPixel <= 0) return;
    const edge = this.desk.stage.getBoundingClientRect().left + left;
    const from = a.time - (a.x - edge) * perPixel;
    this.desk.show(from, from + (right - left) * perPixel);
  }

  release(event) {
    if (!this.down.delete(event.pointerId)) return;
    const desk = this.desk;
    const isTap = !this.hasMoved && event.type === "pointerup" && !this.first.band;
    const isInside = () => this.first.time > desk.value("from") && this.first.time < desk.value("to");
    if (isTap && desk.chosen && isInside()) {
      if (desk.field("at")) desk.move("at", this.first.time);
    } else if (isTap) {
      const under = desk.runAt(this.first.time);
      if (under) desk.choose(under, true);
    }
    if (this.hasMoved && this.marks && event.type === "pointerup") desk.handles.to.focus({ preventScroll: true });
  }
}

document.querySelectorAll("[data-trace-desk]").forEach((root) => new TraceDesk(root));
