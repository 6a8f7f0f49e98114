// Joins payload, state, picture and text. The state decides; everything else follows.

import { element } from "./dom.js";
import { Picture } from "./picture.js";
import { readPayload } from "./payload.js";
import { panes } from "./panes.js";
import { speak, told } from "./words.js";
import { copied, found, freshState, isGone, isOnSide, isPeekedThrough, isVisible, Plan, plainLetters, sidesOf, SIDES } from "./state.js";

const THEMES = { light: [0.9, 0.905, 0.91], dark: [0.1, 0.107, 0.122] };
const $ = (id) => document.getElementById(id);

class Page {
  constructor(facts, meshes) {
    this.facts = facts;
    speak(facts.words);
    this.parts = facts.parts;
    this.parts.forEach((part, number) => {
      part.number = number;
      part.side = { l: "left", r: "right" }[part.side] || "";
    });
    this.plan = new Plan(facts.steps, this.parts);
    for (const each of facts.index) each.plain = each.names.map(plainLetters);
    this.state = freshState();
    this.past = [];
    this.step = 0;
    this.calm = matchMedia("(prefers-reduced-motion: reduce)");
    try {
      this.picture = new Picture($("canvas"), facts, meshes);
    } catch (problem) {
      this.picture = null;
      $("message").textContent =
        told("This browser shows no 3D pictures (WebGL 2 is missing or switched off). Names, captions and the steps of the plan are all here as text.");
    }
    this.panes = panes(this);
    this.#dress();
    this.#listen();
    if (this.picture) {
      this.picture.onDraw = () => this.#marks();
      this.#theme(matchMedia("(prefers-color-scheme: dark)").matches ? "dark" : "light");
      new ResizeObserver(() => this.picture.resize()).observe($("picture"));
      this.picture.resize();
      this.picture.pose = this.#viewPose("posterior");
      $("message").textContent = "";
    } else this.#theme("light");
    this.refresh();
    this.open("steps");
    this.#cautions();
  }

  // ---------------------------------------------------------------- state

  change(words, make) {
    const next = copied(this.state);
    make(next);
    this.past.push([words, this.state]);
    if (this.past.length > 200) this.past.shift();
    this.state = next;
    this.refresh();
    this.say(words);
  }

  undo() {
    const last = this.past.pop();
    if (!last) return;
    this.state = last[1];
    this.refresh();
    this.say(told("Undone: {what}", { what: last[0] }));
  }

  say(words) {
    $("spoken").textContent = words;
  }

  peelTo(depth, choice = this.state.working) {
    depth = Math.max(0, Math.min(this.facts.strata.length, depth));
    const where = depth
      ? told("Peeled to {name}", { name: this.facts.strata[depth] || told("nothing") })
      : told("Laid all back");
    this.change(`${where}, ${choice === "both" ? told("both sides") : sideWords(choice)}`, (s) => {
      const outward = sidesOf(choice).some((side) => depth < s.peeled[side]);
      for (const side of sidesOf(choice)) {
        s.peeled[side] = depth;
        // Going outward also returns what steps removed and what was off from there on.
        if (outward) for (const n of [...s.off[side]]) if (n >= depth) s.off[side].delete(n);
      }
      if (outward)
        for (const n of [...s.removed])
          if (isOnSide(this.parts[n], choice) && this.parts[n].stratum >= depth) s.removed.delete(n);
      s.alone.clear();
    });
    this.#followPlan();
  }

  // The steps follow what was peeled: the first one that is not done is shown.
  #followPlan() {
    const next = this.plan.steps.findIndex(
      (step) => !step.optional && !this.plan.isDone(step, this.state, this.state.working)
    );
    this.step = next < 0 ? this.plan.steps.length - 1 : next;
    this.panes.refresh();
  }

  peelBy(steps) {
    const depths = sidesOf(this.state.working).map((side) => this.state.peeled[side]);
    this.peelTo((steps > 0 ? Math.max(...depths) : Math.min(...depths)) + steps);
  }

  toggleStratum(stratum) {
    const sides = sidesOf(this.state.working);
    const gone = (side) => stratum < this.state.peeled[side] || this.state.off[side].has(stratum);
    const back = sides.every(gone);
    const name = this.facts.strata[stratum];
    this.change(back ? told("{name} shown", { name }) : told("{name} hidden", { name }), (s) => {
      for (const side of sides) {
        if (!back) s.off[side].add(stratum);
        else {
          s.off[side].delete(stratum);
          if (stratum < s.peeled[side]) {
            for (let n = stratum + 1; n < s.peeled[side]; n++) s.off[side].add(n);
            for (let n = 0; n < stratum; n++) s.off[side].add(n);
            s.peeled[side] = 0;
          }
        }
      }
    });
  }

  select(number, fly = false, peek = false) {
    const next = copied(this.state);
    next.selected = number;
    next.peek = peek && number >= 0;
    this.state = next; // looking is not dissecting: selection is not undone on its own
    this.refresh();
    if (number < 0) return;
    const part = this.parts[number];
    this.say(this.spoken(part));
    if (fly) this.flyTo([number]);
  }

  setPeek(on) {
    this.state = { ...copied(this.state), peek: on };
    this.refresh();
  }

  // Brings a part into view: takes off what the state laid over its own hiding, no more.
  reveal(number) {
    const part = this.parts[number];
    if (isVisible(part, this.state)) return;
    this.change(told("{name} shown", { name: part.title }), (s) => {
      s.alone.clear();
      s.hidden.delete(number);
      s.removed.delete(number);
      if (part.side && s.shown !== "both" && s.shown !== part.side) s.shown = "both";
      for (const side of part.side ? [part.side] : SIDES) {
        s.off[side].delete(part.stratum);
        if (part.stratum < s.peeled[side]) s.peeled[side] = part.stratum;
      }
    });
  }

  flyTo(numbers) {
    if (this.picture && numbers.length)
      this.picture.flyTo(this.picture.framing(numbers, undefined, undefined, 110), this.calm.matches);
  }

  spoken(part) {
    const caption = this.facts.captions[part.caption];
    const lines = caption.lines.map(([head, text]) => `${head}: ${text}.`).join(" ");
    return `${part.title}. ${caption.latin}. ${this.placeOf(part)}. ${lines}`;
  }

  isVisible(part) {
    return isVisible(part, this.state);
  }

  placeOf(part) {
    return told("{kind}, stratum {n} ({name}){done}", {
      kind: part.kind,
      n: part.stratum,
      name: this.facts.strata[part.stratum],
      done: isGone(part, this.state) ? told(", taken off") : "",
    });
  }

  showScene(number) {
    const scene = this.facts.scenes[number];
    this.change(told("Scene {n}: {title}", { n: number + 1, title: scene.title }), (s) => {
      const fresh = freshState();
      Object.assign(s, fresh, { scene: number, working: s.working, shown: scene.shown });
      for (const side of SIDES) {
        s.peeled[side] = scene.peeled[side];
        for (const n of scene.off[side]) s.off[side].add(n);
        for (const id of scene.ticked[side]) s.ticked[side].add(id);
      }
      for (const name of ["removed", "hidden", "through", "alone"])
        for (const n of scene[name]) s[name].add(n);
      s.selected = scene.selected;
    });
    if (this.picture) {
      const pose = scene.pose || this.#viewPose(scene.view);
      this.picture.flyTo({ ...this.picture.pose, ...pose }, this.calm.matches);
    }
    this.open("talk");
  }

  // ---------------------------------------------------------------- what is seen

  refresh() {
    const s = this.state;
    const visible = this.parts.filter((part) => isVisible(part, s)).length;
    if (this.picture) {
      const bare = this.#bareFilms();
      this.picture.show((part) => [
        isVisible(part, s),
        s.through.has(part.number) || isPeekedThrough(part, s, this.parts)
          ? this.facts.see_through
          : bare.has(part.number) ? this.facts.film : 1,
        part.number === s.selected ? 1 : 0,
      ]);
    }
    document.body.dataset.visible = visible;
    for (const button of document.querySelectorAll("[data-working]"))
      press(button, "aria-checked", button.dataset.working === s.working);
    $("undo").disabled = !this.past.length;
    this.#rail();
    this.#strip();
    this.panes.refresh();
  }

  // Films that lie open: everything that covers them on their side is off.
  #bareFilms() {
    if (this.state.alone.size) return new Set();
    const covers = { left: Infinity, right: Infinity };
    for (const part of this.parts)
      if (part.covers && isVisible(part, this.state))
        for (const side of part.side ? [part.side] : SIDES)
          covers[side] = Math.min(covers[side], part.stratum);
    const bare = (film) =>
      (film.side ? [film.side] : SIDES).every((side) => covers[side] >= film.stratum);
    return new Set(this.parts.filter((p) => p.film && bare(p)).map((p) => p.number));
  }

  #rail() {
    const s = this.state;
    const sides = sidesOf(s.working);
    const outer = Math.min(...sides.map((side) => s.peeled[side]));
    [...$("bands").children].forEach((row, stratum) => {
      const gone = SIDES.map((side) => stratum < s.peeled[side] || s.off[side].has(stratum));
      const [band, eye] = row.children;
      const all = sides.every((side) => gone[SIDES.indexOf(side)]);
      band.classList.toggle("gone", gone[0] && gone[1]);
      press(band, "aria-current", stratum === outer);
      const halves = gone[0] !== gone[1] ? (gone[0] ? told("left off") : told("right off")) : gone[0] ? told("off") : "";
      band.querySelector(".halves").textContent = gone[0] !== gone[1] ? halves : "";
      band.setAttribute(
        "aria-label",
        told("Peel to stratum {n}, {name}", { n: stratum, name: this.facts.strata[stratum] }) +
          (halves ? `, ${halves}` : "")
      );
      eye.textContent = all ? "○" : "●";
      press(eye, "aria-pressed", !all);
      const name = this.facts.strata[stratum];
      eye.setAttribute("aria-label", all ? told("Show {name} alone", { name }) : told("Hide {name} alone", { name }));
    });
    $("shallower").disabled = sides.every((side) => s.peeled[side] === 0);
    $("deeper").disabled = sides.every((side) => s.peeled[side] >= this.facts.strata.length - 1);
  }

  // Hiding is never silent: a strip says what is hidden, and a press brings it back.
  #strip() {
    const s = this.state;
    const strip = $("hidden-strip");
    strip.replaceChildren();
    const add = (words, back) => strip.append(element("button", { onclick: back }, `${words} ×`));
    const named = (set) => {
      const names = [...set].map((n) => this.parts[n].title);
      return names.length > 2
        ? told("{names} and {n} more", { names: names.slice(0, 2).join("; "), n: names.length - 2 })
        : names.join("; ");
    };
    for (const [field, words] of [["alone", told("Only")], ["hidden", told("Hidden:")], ["through", told("See-through:")]])
      if (s[field].size)
        add(`${words} ${named(s[field])}`, () => this.change(told("Brought back"), (n) => n[field].clear()));
    if (s.peek && this.parts.some((part) => isVisible(part, s) && isPeekedThrough(part, s, this.parts)))
      add(told("Looking through what covers it"), () => this.setPeek(false));
    if (s.shown !== "both")
      add(
        s.shown === "left" ? told("Only the left side") : told("Only the right side"),
        () => this.change(told("Both sides shown"), (n) => (n.shown = "both")));
  }

  #marks() {
    if (!this.picture) return;
    const x = this.picture.axes().right.x;
    $("mark-left").textContent = Math.abs(x) < 0.3 ? "" : x < 0 ? told("L") : told("R");
    $("mark-right").textContent = Math.abs(x) < 0.3 ? "" : x < 0 ? told("R") : told("L");
    document.body.dataset.frames = this.picture.frames;
  }

  open(name) {
    for (const tab of document.querySelectorAll("[role=tab]")) {
      const on = tab.id === `tab-${name}`;
      press(tab, "aria-selected", on);
      tab.tabIndex = on ? 0 : -1;
      $(tab.getAttribute("aria-controls")).hidden = !on;
    }
    this.tab = name;
  }

  // ---------------------------------------------------------------- setting up

  #dress() {
    this.facts.strata.forEach((name, stratum) => {
      const chip = element("span", { className: "chip" });
      chip.style.background = `rgb(${this.facts.rail[stratum].join(",")})`;
      const band = element("button", { className: "band", onclick: () => this.peelTo(stratum) }, chip);
      band.append(
        element("span", { className: "number" }, String(stratum)),
        element("span", { className: "name" }, name),
        element("span", { className: "halves" })
      );
      band.title = told("Peel to {name}", { name });
      const eye = element("button", { className: "eye", onclick: () => this.toggleStratum(stratum) });
      $("bands").append(element("li", {}, band, eye));
    });
    for (const [name, view] of Object.entries(this.facts.views).slice(0, 5))
      $("views").append(
        element(
          "button",
          { onclick: () => this.#go(name), title: view.title, ariaLabel: view.title },
          view.short
        )
      );
    if (this.facts.scenes.length) {
      $("tab-talk").hidden = false;
    }
  }

  #viewPose(name) {
    const { azimuth, elevation } = this.facts.views[name];
    const numbers = this.parts
      .filter((part) => isVisible(part, this.state) && !part.context)
      .map((part) => part.number);
    return this.picture.framing(numbers, azimuth, elevation);
  }

  #go(name) {
    if (this.picture) this.picture.flyTo(this.#viewPose(name), this.calm.matches);
    this.say(this.facts.views[name].title);
  }

  #theme(name) {
    document.documentElement.dataset.theme = name;
    press($("theme"), "aria-pressed", name === "dark");
    if (this.picture) this.picture.setGround(THEMES[name]);
  }

  #cautions() {
    const box = $("cautions-text");
    box.replaceChildren(
      ...this.facts.cautions.map((each) =>
        element("p", {}, element("b", {}, `${each.title}. `), each.text)
      )
    );
    if (location.hash !== "#read") $("cautions").showModal();
  }

  #listen() {
    $("undo").onclick = () => this.undo();
    $("reset").onclick = () => this.reset();
    $("shallower").onclick = () => this.peelBy(-1);
    $("deeper").onclick = () => this.peelBy(1);
    $("theme").onclick = () =>
      this.#theme(document.documentElement.dataset.theme === "dark" ? "light" : "dark");
    $("cautions-open").onclick = () => $("cautions").showModal();
    $("search").oninput = () => this.panes.find(found(this.facts.index, $("search").value));
    for (const button of document.querySelectorAll("[data-working]"))
      button.onclick = () => {
        this.state = { ...copied(this.state), working: button.dataset.working };
        this.refresh();
      };
    const tabs = [...document.querySelectorAll("[role=tab]")];
    for (const tab of tabs) {
      tab.onclick = () => this.open(tab.id.slice(4));
      tab.onkeydown = (event) => {
        const shown = tabs.filter((each) => !each.hidden);
        const by = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
        if (!by) return;
        event.stopPropagation();
        const next = shown[(shown.indexOf(tab) + by + shown.length) % shown.length];
        this.open(next.id.slice(4));
        next.focus();
      };
    }
    document.addEventListener("keydown", (event) => this.#key(event));
    if (this.picture) this.#pointers($("canvas"));
  }

  reset() {
    this.change(told("All back"), (s) => {
      Object.assign(s, freshState(), { working: s.working, selected: s.selected });
    });
    this.#go("posterior");
  }

  #key(event) {
    if (event.target.closest("input, dialog")) return;
    if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === "z") {
      event.preventDefault();
      this.undo();
      return;
    }
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const s = this.state;
    const part = this.parts[s.selected];
    const turn = { ArrowLeft: [-8, 0], ArrowRight: [8, 0], ArrowUp: [0, 8], ArrowDown: [0, -8] }[event.key];
    const views = Object.keys(this.facts.views);
    const keys = {
      "]": () => this.peelBy(1),
      "[": () => this.peelBy(-1),
      "+": () => this.picture?.zoom(1.2),
      "=": () => this.picture?.zoom(1.2),
      "-": () => this.picture?.zoom(1 / 1.2),
      a: () => this.reset(),
      d: () => $("theme").click(),
      "/": () => {
        this.open("find");
        $("search").focus();
      },
      h: () => part && this.panes.acts.hide(part),
      t: () => part && this.panes.acts.through(part),
      o: () => part && this.panes.acts.alone(part),
      x: () => part && this.panes.acts.twin(part),
      f: () => part && this.flyTo([part.number]),
      p: () => part && this.setPeek(!s.peek),
      n: () => this.panes.walk(1),
      b: () => this.panes.walk(-1),
      Escape: () => this.select(-1),
    };
    if (turn && event.target.id === "canvas") {
      if (event.shiftKey) this.picture?.pan(-turn[0] * 5, turn[1] * 5);
      else this.picture?.orbit(...turn);
    } else if (/^[1-8]$/.test(event.key) && views[event.key - 1]) this.#go(views[event.key - 1]);
    else if (keys[event.key]) keys[event.key]();
    else return;
    event.preventDefault();
  }

  // One finger or the left button turns, two fingers, Shift or another button move, pinch and
  // wheel come closer; a tap picks.
  #pointers(canvas) {
    const picture = this.picture;
    const down = new Map();
    let began = null;
    let pinch = 0;
    const at = (event) => {
      const box = canvas.getBoundingClientRect();
      return [event.clientX - box.left, event.clientY - box.top];
    };
    const middle = () => {
      const all = [...down.values()];
      return [0, 1].map((k) => all.reduce((sum, p) => sum + p[k], 0) / all.length);
    };
    const spread = () => {
      const [a, b] = [...down.values()];
      return Math.hypot(a[0] - b[0], a[1] - b[1]);
    };
    canvas.addEventListener("contextmenu", (event) => event.preventDefault());
    canvas.addEventListener("pointerdown", (event) => {
      canvas.setPointerCapture(event.pointerId);
      canvas.focus({ preventScroll: true });
      down.set(event.pointerId, at(event));
      began = down.size === 1 ? { place: at(event), time: event.timeStamp, moved: false } : null;
      if (down.size === 2) pinch = spread();
      $("bubble").hidden = true;
    });
    canvas.addEventListener("pointermove", (event) => {
      const now = at(event);
      if (!down.has(event.pointerId)) {
        if (event.pointerType === "mouse") this.#hover(now);
        return;
      }
      const last = down.get(event.pointerId);
      if (began && !began.moved && Math.hypot(now[0] - began.place[0], now[1] - began.place[1]) < 6)
        return;
      if (began && !began.moved) picture.setMoving(true);
      if (began) began.moved = true;
      const [dx, dy] = [now[0] - last[0], now[1] - last[1]];
      if (down.size === 2) {
        const before = middle();
        down.set(event.pointerId, now);
        const after = middle();
        picture.pan(after[0] - before[0], after[1] - before[1]);
        const wide = spread();
        if (pinch > 0 && wide > 0) picture.zoom(wide / pinch, ...after);
        pinch = wide;
        return;
      }
      down.set(event.pointerId, now);
      if (event.shiftKey || event.buttons & 6) picture.pan(dx, dy);
      else picture.orbit(-dx * 0.35, dy * 0.35);
    });
    const up = (event) => {
      if (!down.delete(event.pointerId)) return;
      if (began && !began.moved && event.type === "pointerup" && event.button === 0)
        this.#tap(began.place);
      if (!down.size) picture.setMoving(false);
      began = null;
    };
    canvas.addEventListener("pointerup", up);
    canvas.addEventListener("pointercancel", up);
    canvas.addEventListener("pointerleave", () => {
      $("bubble").hidden = true;
      clearTimeout(this.hovering);
    });
    canvas.addEventListener(
      "wheel",
      (event) => {
        event.preventDefault();
        picture.zoom(Math.exp(-event.deltaY * (event.deltaMode ? 0.04 : 0.0012)), ...at(event));
      },
      { passive: false }
    );
  }

  #tap(place) {
    const number = this.picture.pick(...place);
    this.select(number);
    this.#bubble(number, place);
    if (number >= 0) this.open("part");
  }

  #hover(place) {
    clearTimeout(this.hovering);
    $("bubble").hidden = true;
    this.hovering = setTimeout(() => this.#bubble(this.picture.pick(...place), place), 120);
  }

  #bubble(number, [x, y]) {
    const bubble = $("bubble");
    bubble.hidden = number < 0;
    if (number < 0) return;
    bubble.textContent = this.parts[number].title;
    const right = x > this.picture.width / 2;
    bubble.style.left = right ? "auto" : `${x + 14}px`;
    bubble.style.right = right ? `${this.picture.width - x + 14}px` : "auto";
    bubble.style.top = `${Math.max(4, y - 34)}px`;
  }
}

const sideWords = (side) => (side === "left" ? told("left") : told("right"));

function press(node, name, on) {
  node.setAttribute(name, on ? "true" : "false");
}

async function begin() {
  try {
    if (!("DecompressionStream" in window))
      throw new Error($("message").dataset.old);
    const { facts, meshes } = await readPayload($("payload").textContent.trim());
    $("payload").remove();
    window.peelback = new Page(facts, meshes);
  } catch (problem) {
    $("message").textContent = `${$("message").dataset.failed} ${problem.message}.`;
    throw problem;
  }
}

begin();
