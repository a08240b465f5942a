// Files and whole folders dropped on their frame: each is sent by itself and shows how far it is; one that fails costs
// no other. Without script the same form sends its files at once.

const MOST_FILES = 2000;
const LARGEST_FILE = 512e6;
const LARGEST_DROP = 2e9;

/** Files that a system leaves in every folder and no crew means to send. */
const isLitter = (path) => /(^|\/)(\.[^/]*|Thumbs\.db|desktop\.ini|__MACOSX\/.*)$/i.test(path);

const sized = (bytes) =>
  bytes < 1e6 ? `${Math.max(1, Math.round(bytes / 1e3))}\u00a0kB` : `${(bytes / 1e6).toFixed(1)}\u00a0MB`;

const counted = (number) => (number === 1 ? "1 file" : `${number.toLocaleString("en-GB")} files`);

/** Every file below the dropped entries, with its path. */
async function filesOf(entries) {
  const found = [];
  for (const entry of entries) {
    if (entry.isFile) {
      const file = await new Promise((take, fail) => entry.file(take, fail));
      found.push({ file, path: entry.fullPath.replace(/^\/+/, "") });
    } else {
      const reader = entry.createReader();
      // A reader gives a folder's entries in portions, and an empty portion at the end.
      for (;;) {
        const portion = await new Promise((take, fail) => reader.readEntries(take, fail));
        if (portion.length === 0) break;
        found.push(...(await filesOf(portion)));
      }
      if (found.length > 4 * MOST_FILES) break;
    }
  }
  return found;
}

/** Sends one file; gives its hash, or says why not. */
function send(one, token, tell) {
  return new Promise((done) => {
    const request = new XMLHttpRequest();
    request.upload.addEventListener("progress", (event) => {
      if (event.lengthComputable) tell(event.loaded / event.total);
    });
    request.addEventListener("load", () => {
      if (request.status === 200) done({ sha256: request.responseText.trim() });
      else if (request.status === 413) done({ why: "larger than 512 MB" });
      else done({ why: `not taken (${request.status})` });
    });
    request.addEventListener("error", () => done({ why: "could not be read or sent" }));
    const body = new FormData();
    body.append(token.name, token.value);
    body.append("file", one.file, one.path.split("/").pop());
    request.open("POST", "/uploads");
    request.send(body);
  });
}

class Drop {
  constructor(form) {
    this.form = form;
    this.chosen = form.querySelector("[data-chosen]");
    this.files = [];
    this.inputs = Array.from(form.querySelectorAll("input[data-drop]"));
    this.list = document.createElement("ol");
    this.list.className = "sending";
    this.list.tabIndex = 0;
    this.list.setAttribute("aria-label", "Files being sent");
    this.list.hidden = true;
    form.append(this.list);
    this.inputs.forEach((input) => input.addEventListener("change", () => this.takeInput(input)));
    form.addEventListener("dragover", (event) => {
      event.preventDefault();
      form.classList.add("over");
    });
    form.addEventListener("dragleave", () => form.classList.remove("over"));
    form.addEventListener("drop", (event) => this.takeDrop(event));
    form.addEventListener("submit", (event) => this.submit(event));
    this.inputs.forEach((input) => this.takeInput(input));
  }

  takeInput(input) {
    const files = Array.from(input.files, (file) => ({ file, path: file.webkitRelativePath || file.name }));
    if (files.length > 0) this.take(files);
  }

  async takeDrop(event) {
    event.preventDefault();
    this.form.classList.remove("over");
    const entries = Array.from(event.dataTransfer.items, (item) => item.webkitGetAsEntry?.()).filter(Boolean);
    const plain = Array.from(event.dataTransfer.files, (file) => ({ file, path: file.name }));
    try {
      this.take(entries.length > 0 ? await filesOf(entries) : plain);
    } catch (trouble) {
      this.say(`The folder could not be read: ${trouble.message}. Choose it with the button instead.`, true);
    }
  }

  take(files) {
    const wanted = files.filter((one) => !isLitter(one.path));
    const litter = files.length - wanted.length;
    const bytes = wanted.reduce((sum, one) => sum + one.file.size, 0);
    this.files = [];
    if (wanted.length > MOST_FILES) {
      this.say(`${counted(wanted.length)} are more than the ${MOST_FILES.toLocaleString("en-GB")} that are taken in at
        once. Send them in parts.`, true);
    } else if (bytes > LARGEST_DROP) {
      this.say(`${sized(bytes)} are more than the 2 GB that are taken in at once. Send them in parts.`, true);
    } else {
      this.files = wanted;
      const what = wanted.length === 1 ? wanted[0].file.name : `${counted(wanted.length)}, ${sized(bytes)}`;
      this.say(litter > 0 ? `${what}; ${counted(litter)} of the system's own left out` : what, false);
    }
  }

  say(words, isFault) {
    this.chosen.textContent = words;
    this.chosen.classList.toggle("field-error", isFault);
    if (isFault) this.chosen.setAttribute("role", "alert");
    else this.chosen.removeAttribute("role");
  }

  async submit(event) {
    if (this.files.length === 0) return;
    event.preventDefault();
    if (this.busy) return;
    const who = this.form.querySelector("[name=who]");
    if (who.value.trim() === "") {
      who.focus();
      this.say("Who sends them? Write your code, then send.", true);
      return;
    }
    this.busy = true;
    await this.sendAll();
    this.busy = false;
  }

  async sendAll() {
    const token = this.form.querySelector('input[type="hidden"]');
    this.list.hidden = false;
    const rows = this.files.map((one) => this.row(one));
    let failed = 0;
    for (let i = 0; i < rows.length; i++) {
      const row = rows[i];
      if (!row.one.sha256) {
        row.line.scrollIntoView({ block: "nearest" });
        const answer =
          row.one.file.size > LARGEST_FILE
            ? { why: "larger than 512 MB" }
            : await send(row.one, token, (share) => (row.bar.value = share));
        row.one.sha256 = answer.sha256;
        row.bar.value = answer.sha256 ? 1 : 0;
        row.word.textContent = answer.sha256 ? "here" : `not sent: ${answer.why}`;
        row.line.classList.toggle("failed", !answer.sha256);
        failed += answer.sha256 ? 0 : 1;
      }
      this.say(`${i + 1} of ${counted(rows.length)}${failed > 0 ? `, ${failed} not sent` : ""}`, false);
    }
    if (failed === 0) this.keep();
    else this.ask(failed);
  }

  row(one) {
    const line = document.createElement("li");
    const name = document.createElement("span");
    const bar = document.createElement("progress");
    const word = document.createElement("span");
    name.className = "wrap-anywhere";
    name.textContent = one.path;
    bar.max = 1;
    bar.value = one.sha256 ? 1 : 0;
    bar.setAttribute("aria-label", one.path);
    word.className = "quiet";
    word.textContent = one.sha256 ? "here" : sized(one.file.size);
    line.append(name, bar, word);
    if (!one.sha256 || this.list.children.length === 0) this.list.append(line);
    return { one, line, bar, word };
  }

  /** Some failed: the person decides; nothing that came through is lost. */
  ask(failed) {
    const here = this.files.filter((one) => one.sha256).length;
    this.say(`${counted(failed)} could not be sent; ${counted(here)} came through.`, true);
    const line = document.createElement("li");
    const button = (words, act) => {
      const made = document.createElement("button");
      made.type = "button";
      made.className = "act";
      made.textContent = words;
      made.addEventListener("click", act);
      line.append(made);
      return made;
    };
    const again = button("Try those again", () => {
      this.list.replaceChildren();
      this.sendAll();
    });
    if (here > 0) button(`Keep the ${here} that came`, () => this.keep());
    line.className = "sending-acts";
    this.list.append(line);
    again.focus();
  }

  /** Names what was sent to the day. */
  keep() {
    const staged = document.createElement("textarea");
    staged.name = "staged";
    staged.hidden = true;
    staged.value = this.files
      .filter((one) => one.sha256)
      .map((one) => `${one.sha256} ${one.path.replace(/[\r\n]/g, " ")}`)
      .join("\n");
    this.form.append(staged);
    this.inputs.forEach((input) => (input.value = ""));
    this.form.submit();
  }
}

document.querySelectorAll("form.drop").forEach((form) => new Drop(form));
