// The text beside the picture: caption, steps, search results, scenes, about.

import { element } from "./dom.js";
import { isVisible } from "./state.js";

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
      page.change(`${part.title} hidden`, (s) => {
        s.hidden.add(part.number);
        s.alone.delete(part.number);
      }),
    through: (part) =>
      page.change(`${part.title} see-through on or off`, (s) => flip(s.through, part.number)),
    alone: (part) =>
      page.change(`${part.title} alone on or off`, (s) => {
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
        element("h2", {}, "No part picked"),
        element(
          "p",
          {},
          "Tap or click a part of the picture, or choose one under Find. Its name, attachments, nerve, artery and action are told here."
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
    if (isVisible(part, s)) add("Hide", () => acts.hide(part));
    else add("Bring into view", () => page.reveal(part.number));
    add("See through", () => acts.through(part), s.through.has(part.number));
    add("Look through what covers it", () => page.setPeek(!s.peek), s.peek);
    add("Alone", () => acts.alone(part), s.alone.has(part.number));
    add("Go to it", () => page.flyTo([part.number]));
    if (part.twin >= 0) add("Other side", () => acts.twin(part));
    const sources = element("details", {}, element("summary", {}, "Sources"));
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
      ["Drag, arrow keys", "turn"],
      ["Two fingers, Shift and drag", "move"],
      ["Wheel, pinch, + −", "closer, further"],
      ["] [", "peel deeper, lay back"],
      ["H T P O X F", "hide, see through, look through what covers it, alone, other side, go to it"],
      ["N B", "next step, step before"],
      ["1 to 8", "views"],
      ["/", "find"],
      ["A, Ctrl+Z", "all back, undo"],
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
    const where = choice === "both" ? "both sides" : `the ${choice}`;
    const box = [];
    const row = element("div", { className: "acts" });
    row.append(
      element("button", { onclick: () => walk(-1), disabled: page.step === 0 }, "◀ Before"),
      element("button", { onclick: () => walk(1), disabled: page.step === facts.steps.length - 1 }, "Next ▶")
    );
    const doing = element("div", { className: "acts" });
    if (done)
      doing.append(
        element(
          "button",
          {
            onclick: () =>
              page.change(`${step.title}: laid back`, (n) => plan.layBack(step, n, choice)),
          },
          `Lay it back on ${where}`
        )
      );
    else if (!missing.length)
      doing.append(
        element(
          "button",
          {
            className: "strong",
            onclick: () => page.change(`${step.title}: done`, (n) => plan.doStep(step, n, choice)),
          },
          `Do it on ${where}`
        )
      );
    else {
      const reasons = missing
        .map((m) => `First, on the ${m.side}: ${m.steps.map((each) => `“${each.title}”`).join(", ")}.`)
        .join(" ");
      box.push(element("p", { className: "caution" }, `Not yet. ${reasons}`));
      doing.append(
        element(
          "button",
          {
            className: "strong",
            onclick: () =>
              page.change(`${step.title}: done with all before it`, (n) =>
                plan.doStep(step, n, choice, true)
              ),
          },
          "Do all before it, then this"
        ),
        element(
          "button",
          { onclick: () => page.change(`${step.title}: done anyway`, (n) => plan.doStep(step, n, choice)) },
          "Anyway"
        )
      );
    }
    const say = (head, text, name = "") => {
      if (text) box.push(element("h3", {}, head), element("p", { className: name }, text));
    };
    say("Do", step.do);
    say("Cut", step.cut);
    say("Hinge", step.hinge);
    say("Keep, not to be cut", step.keep, "keep");
    if (step.reveals.length) {
      const links = element("p", { className: "links" });
      for (const each of step.reveals)
        if (each.part >= 0) links.append(partButton(each.part, [each.words]));
        else links.append(element("span", {}, `${each.words} `));
      box.push(element("h3", {}, "Find"), links);
    }
    say("Stop sign", step.stop, "stop");
    say("Caution", step.caution, "caution");
    say("Courses differ", step.differs);
    const all = element("ol", { className: "plain listed" });
    facts.steps.forEach((each, number) => {
      const state = plan.isDone(each, s, each.side === "both" ? "both" : s.working)
        ? "✓ done"
        : plan.missing(each, s, s.working).length
          ? "– later"
          : "○ open";
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
      element("p", { className: "soft" }, `Step ${page.step + 1} of ${facts.steps.length}${step.optional ? ", optional" : ""}`),
      element("h2", {}, step.title),
      row,
      doing,
      ...box,
      element("h3", {}, "All steps"),
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
    page.say(`Step ${page.step + 1}: ${facts.steps[page.step].title}. ${facts.steps[page.step].do}`);
  }

  function find(results) {
    const list = $("found");
    const shown = results.slice(0, 400);
    $("found-count").textContent = results.length
      ? `${results.length} found`
      : "Nothing is called that";
    list.replaceChildren(
      ...shown.map((each) => {
        const here = each.parts.find((n) => isVisible(parts[n], page.state));
        return element(
          "li",
          {},
          partButton(here ?? each.parts[0], [
            element("span", {}, each.title),
            element("span", { className: "soft" }, `stratum ${each.stratum}`),
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
        { onclick: () => page.showScene(number) },
        `${number + 1}. ${each.title}`
      );
      button.setAttribute("aria-current", number === now ? "true" : "false");
      all.append(element("li", {}, button));
    });
    const row = element("div", { className: "acts" });
    row.append(
      element("button", { onclick: () => page.showScene(now - 1), disabled: now <= 0 }, "◀ Before"),
      element(
        "button",
        { onclick: () => page.showScene(now + 1), disabled: now >= facts.scenes.length - 1 },
        "Next ▶"
      )
    );
    pane.replaceChildren(
      element("h2", {}, scene ? scene.title : facts.talk_title),
      row,
      element("p", {}, scene ? scene.line : "Choose a scene, or go through them in order."),
      element("p", { className: "soft" }, scene ? scene.notes : ""),
      element("h3", {}, "Scenes"),
      all
    );
  }

  function fillAbout() {
    const cited = element("details", {}, element("summary", {}, "Sources of the facts"));
    const list = element("ul");
    for (const source of facts.sources) list.append(element("li", {}, source));
    cited.append(list);
    const licence = element("details", {}, element("summary", {}, "Licences"));
    licence.append(...facts.licences.map((text) => element("p", {}, text)));
    $("pane-about").replaceChildren(
      element("h2", {}, "About this file"),
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

function flip(set, value) {
  if (!set.delete(value)) set.add(value);
}
