// The text beside the picture: caption, steps, search results, scenes, about.

import { element } from "./dom.js";
import { isVisible } from "./state.js";
import { told } from "./words.js";

const $ = (id) => document.getElementById(id);

export function panes(page) {
  const { facts, parts, plan } = page;

  const partButton = (number, words) =>
    element(
      "button",
      {
        onclick: () => {
          page.reveal(number);
          page.select(number, true, true);
          page.open("part");
        },
      },
      ...words
    );

  const acts = {
    hide: (part) =>
      page.change(told("{name} hidden", { name: part.title }), (s) => {
        s.hidden.add(part.number);
        s.alone.delete(part.number);
      }),
    through: (part) =>
      page.change(told("{name} see-through on or off", { name: part.title }), (s) => flip(s.through, part.number)),
    alone: (part) =>
      page.change(told("{name} alone on or off", { name: part.title }), (s) => {
        const on = s.alone.has(part.number);
        s.alone.clear();
        if (!on) s.alone.add(part.number);
      }),
    twin: (part) => part.twin >= 0 && page.select(part.twin),
  };

  function refreshPart() {
    const pane = $("pane-part");
    const part = parts[page.state.selected];
    if (!part) {
      pane.replaceChildren(
        element("h2", {}, told("No part picked")),
        element(
          "p",
          {},
          told("Tap or click a part of the picture, or choose one under Search. Its name, attachments, nerve, artery and action are told here.")
        ),
        keysTable()
      );
      return;
    }
    const caption = facts.captions[part.caption];
    const s = page.state;
    const lines = element("dl");
    for (const [head, text] of caption.lines)
      lines.append(element("dt", {}, head), element("dd", {}, text));
    const row = element("div", { className: "acts" });
    const add = (words, act, pressed) => {
      const button = element("button", { onclick: act }, words);
      if (pressed !== undefined) button.setAttribute("aria-pressed", pressed);
      row.append(button);
    };
    if (isVisible(part, s)) add(told("Hide"), () => acts.hide(part));
    else add(told("Bring into view"), () => page.reveal(part.number));
    add(told("See through"), () => acts.through(part), s.through.has(part.number));
    add(told("Look through what covers it"), () => page.setPeek(!s.peek), s.peek);
    add(told("Alone"), () => acts.alone(part), s.alone.has(part.number));
    add(told("Go to it"), () => page.flyTo([part.number]));
    if (part.twin >= 0) add(told("Other side"), () => acts.twin(part));
    const sources = element("details", {}, element("summary", {}, told("Sources")));
    const list = element("ul");
    for (const number of caption.sources) list.append(element("li", {}, facts.sources[number]));
    sources.append(list);
    pane.replaceChildren(
      element("h2", {}, part.title),
      element("p", { className: "soft", lang: "la" }, caption.latin),
      element("p", { className: "soft" }, page.placeOf(part)),
      row,
      lines,
      sources
    );
  }

  function keysTable() {
    const rows = [
      [told("Drag, arrow keys"), told("turn")],
      [told("Two fingers, Shift and drag"), told("move")],
      [told("Wheel, pinch, + −"), told("closer, further")],
      ["] [", told("peel deeper, lay back")],
      ["H T P O X F", told("hide, see through, look through what covers it, alone, other side, go to it")],
      ["N B", told("next step, step before")],
      [told("1 to 8"), told("views")],
      ["/", told("search")],
      ["A, Ctrl+Z", told("all back, undo")],
    ];
    const list = element("dl");
    for (const [keys, words] of rows) list.append(element("dt", {}, keys), element("dd", {}, words));
    return list;
  }

  function refreshSteps() {
    const pane = $("pane-steps");
    const step = facts.steps[page.step];
    const s = page.state;
    const choice = step.side === "both" ? "both" : s.working;
    const done = plan.isDone(step, s, choice);
    const missing = done ? [] : plan.missing(step, s, choice);
    const box = [];
    const row = element("div", { className: "acts" });
    row.append(
      element("button", { onclick: () => walk(-1), disabled: page.step === 0 }, told("◀ Before")),
      element("button", { onclick: () => walk(1), disabled: page.step === facts.steps.length - 1 }, told("Next ▶"))
    );
    const doing = element("div", { className: "acts" });
    if (done)
      doing.append(
        element(
          "button",
          {
            onclick: () =>
              page.change(told("{name}: laid back", { name: step.title }), (n) => plan.layBack(step, n, choice)),
          },
          onSide(choice, told("Lay it back on both sides"), told("Lay it back on the left"), told("Lay it back on the right"))
        )
      );
    else if (!missing.length)
      doing.append(
        element(
          "button",
          {
            className: "strong",
            onclick: () => page.change(told("{name}: done", { name: step.title }), (n) => plan.doStep(step, n, choice)),
          },
          onSide(choice, told("Do it on both sides"), told("Do it on the left"), told("Do it on the right"))
        )
      );
    else {
      const reasons = missing
        .map((m) => {
          const steps = m.steps.map((each) => told("“{title}”", { title: each.title })).join(", ");
          return m.side === "left"
            ? told("First, on the left: {steps}.", { steps })
            : told("First, on the right: {steps}.", { steps });
        })
        .join(" ");
      box.push(element("p", { className: "caution" }, `${told("Not yet.")} ${reasons}`));
      doing.append(
        element(
          "button",
          {
            className: "strong",
            onclick: () =>
              page.change(told("{name}: done with all before it", { name: step.title }), (n) =>
                plan.doStep(step, n, choice, true)
              ),
          },
          told("Do all before it, then this")
        ),
        element(
          "button",
          { onclick: () => page.change(told("{name}: done anyway", { name: step.title }), (n) => plan.doStep(step, n, choice)) },
          told("Anyway")
        )
      );
    }
    const say = (head, text, name = "") => {
      if (text) box.push(element("h3", {}, head), element("p", { className: name }, text));
    };
    say(told("Do"), step.do);
    say(told("Cut"), step.cut);
    say(told("Hinge"), step.hinge);
    say(told("Keep, not to be cut"), step.keep, "keep");
    if (step.reveals.length) {
      const links = element("p", { className: "links" });
      for (const each of step.reveals)
        if (each.part >= 0) links.append(partButton(each.part, [each.words]));
        else links.append(element("span", {}, `${each.words} `));
      box.push(element("h3", {}, told("Find")), links);
    }
    say(told("Stop sign"), step.stop, "stop");
    say(told("Caution"), step.caution, "caution");
    say(told("Courses differ"), step.differs);
    const all = element("ol", { className: "plain listed" });
    facts.steps.forEach((each, number) => {
      const state = plan.isDone(each, s, each.side === "both" ? "both" : s.working)
        ? told("✓ done")
        : plan.missing(each, s, s.working).length
          ? told("– later")
          : told("○ open");
      const button = element(
        "button",
        { onclick: () => (go(number), $("pane-steps").scrollTo(0, 0)) },
        element("span", {}, `${number + 1}. ${each.title}`),
        element("span", { className: "state soft" }, state)
      );
      button.setAttribute("aria-current", number === page.step ? "true" : "false");
      all.append(element("li", {}, button));
    });
    pane.replaceChildren(
      element("p", { className: "soft" }, told("Step {n} of {count}", { n: page.step + 1, count: facts.steps.length }) + (step.optional ? told(", optional") : "")),
      element("h2", {}, step.title),
      row,
      doing,
      ...box,
      element("h3", {}, told("All steps")),
      all,
      element("p", { className: "soft" }, facts.plan_note)
    );
  }

  function go(number) {
    page.step = Math.max(0, Math.min(facts.steps.length - 1, number));
    refreshSteps();
  }

  function walk(by) {
    page.open("steps");
    go(page.step + by);
    $("pane-steps").scrollTo(0, 0);
    const { title, do: words } = facts.steps[page.step];
    page.say(told("Step {n}: {title}. {words}", { n: page.step + 1, title, words }));
  }

  function find(results) {
    const list = $("found");
    const shown = results.slice(0, 400);
    $("found-count").textContent = results.length
      ? told("{n} found", { n: results.length })
      : told("Nothing is called that");
    list.replaceChildren(
      ...shown.map((each) => {
        const here = each.parts.find((n) => isVisible(parts[n], page.state));
        return element(
          "li",
          {},
          partButton(here ?? each.parts[0], [
            element("span", {}, each.title),
            element("span", { className: "soft" }, told("stratum {n}", { n: each.stratum })),
          ])
        );
      })
    );
  }

  function refreshTalk() {
    if (!facts.scenes.length) return;
    const pane = $("pane-talk");
    const now = page.state.scene;
    const scene = facts.scenes[now];
    const all = element("ol", { className: "plain listed" });
    facts.scenes.forEach((each, number) => {
      const button = element(
        "button",
        { onclick: () => (page.showScene(number), pane.scrollTo(0, 0)) },
        `${number + 1}. ${each.title}`
      );
      button.setAttribute("aria-current", number === now ? "true" : "false");
      all.append(element("li", {}, button));
    });
    const row = element("div", { className: "acts" });
    row.append(
      element("button", { onclick: () => page.showScene(now - 1), disabled: now <= 0 }, told("◀ Before")),
      element(
        "button",
        { onclick: () => page.showScene(now + 1), disabled: now >= facts.scenes.length - 1 },
        told("Next ▶")
      )
    );
    pane.replaceChildren(
      element("h2", {}, scene ? scene.title : facts.talk_title),
      row,
      element("p", {}, scene ? scene.line : told("Choose a scene, or go through them in order.")),
      element("p", { className: "soft" }, scene ? scene.notes : ""),
      element("h3", {}, told("Scenes")),
      all
    );
  }

  function fillAbout() {
    const cited = element("details", {}, element("summary", {}, told("Sources of the facts")));
    const list = element("ul");
    for (const source of facts.sources) list.append(element("li", {}, source));
    cited.append(list);
    const licence = element("details", {}, element("summary", {}, told("Licences")));
    licence.append(...facts.licences.map((text) => element("p", {}, text)));
    $("pane-about").replaceChildren(
      element("h2", {}, told("About this file")),
      ...facts.about.map((text) => element("p", {}, text)),
      cited,
      licence
    );
  }

  fillAbout();
  find(facts.index);
  return {
    acts,
    find,
    walk,
    refresh: () => {
      refreshPart();
      refreshSteps();
      refreshTalk();
    },
  };
}

const onSide = (choice, both, left, right) => ({ both, left, right })[choice];

function flip(set, value) {
  if (!set.delete(value)) set.add(value);
}
