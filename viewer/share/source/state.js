// What is peeled, hidden, done and picked. Plain values; undo keeps whole states.

export const SIDES = ["left", "right"];

export function freshState() {
  return {
    peeled: { left: 0, right: 0 },
    off: { left: new Set(), right: new Set() },
    ticked: { left: new Set(), right: new Set() },
    removed: new Set(),
    hidden: new Set(),
    through: new Set(),
    alone: new Set(),
    selected: -1,
    peek: false,
    shown: "both",
    working: "both",
    scene: -1,
  };
}

export function copied(state) {
  const pair = (value) => ({ left: new Set(value.left), right: new Set(value.right) });
  return {
    ...state,
    peeled: { ...state.peeled },
    off: pair(state.off),
    ticked: pair(state.ticked),
    removed: new Set(state.removed),
    hidden: new Set(state.hidden),
    through: new Set(state.through),
    alone: new Set(state.alone),
  };
}

export const sidesOf = (choice) => (choice === "both" ? SIDES : [choice]);
export const isOnSide = (part, choice) => choice === "both" || !part.side || part.side === choice;

// A median part goes with a stratum only when both sides have lost it.
export function isGone(part, state) {
  if (state.removed.has(part.number) || state.hidden.has(part.number)) return true;
  const sides = part.side ? [part.side] : SIDES;
  return sides.every((s) => part.stratum < state.peeled[s] || state.off[s].has(part.stratum));
}

export function isVisible(part, state) {
  if (state.alone.size) return state.alone.has(part.number);
  return isOnSide(part, state.shown) && !isGone(part, state);
}

// What is looked through: every shown part that lies outside the picked one.
export function isPeekedThrough(part, state, parts) {
  const wanted = parts[state.selected];
  return state.peek && !!wanted && !state.alone.size && part.stratum < wanted.stratum;
}

// The plan against a state: the same rules as the step line of the desktop program.
export class Plan {
  constructor(steps, parts) {
    this.steps = steps;
    this.parts = parts;
    this.byId = new Map(steps.map((step) => [step.id, step]));
    this.before = new Map(steps.map((step) => [step.id, this.#ancestors(step.id)]));
  }

  #ancestors(id) {
    const found = new Set();
    const waiting = [...this.byId.get(id).needs];
    while (waiting.length) {
      const need = waiting.pop();
      if (!found.has(need)) {
        found.add(need);
        waiting.push(...this.byId.get(need).needs);
      }
    }
    return found;
  }

  after(id) {
    return this.steps.filter((step) => this.before.get(step.id).has(id));
  }

  done(state, side) {
    const takes = (id) => this.byId.get(id).removes[side].length > 0;
    const gone = new Set();
    for (const step of this.steps) {
      if (takes(step.id) && step.removes[side].every((n) => isGone(this.parts[n], state)))
        gone.add(step.id);
    }
    const done = new Set(gone);
    for (const id of gone) for (const a of this.before.get(id)) if (!takes(a)) done.add(a);
    for (const id of state.ticked[side])
      if (!takes(id) && [...this.before.get(id)].every((a) => !takes(a) || gone.has(a)))
        done.add(id);
    return done;
  }

  // What must come first, by side; empty when the step may be done.
  missing(step, state, choice) {
    const sides = step.side === "both" ? SIDES : sidesOf(choice);
    return sides
      .map((side) => {
        const done = this.done(state, side);
        return { side, steps: step.needs.filter((n) => !done.has(n)).map((n) => this.byId.get(n)) };
      })
      .filter((each) => each.steps.length);
  }

  isDone(step, state, choice) {
    const sides = step.side === "both" ? SIDES : sidesOf(choice);
    return sides.every((side) => this.done(state, side).has(step.id));
  }

  doStep(step, state, choice, withAllBefore) {
    const sides = step.side === "both" ? SIDES : sidesOf(choice);
    for (const side of sides) {
      const ids = withAllBefore ? [...this.before.get(step.id), step.id] : [step.id];
      for (const id of ids) {
        state.ticked[side].add(id);
        for (const n of this.byId.get(id).removes[side]) state.removed.add(n);
      }
    }
  }

  layBack(step, state, choice) {
    const steps = [step, ...this.after(step.id)];
    for (const side of step.side === "both" ? SIDES : sidesOf(choice)) {
      const back = new Set(steps.flatMap((each) => each.removes[side]));
      const strata = [...back].map((n) => this.parts[n].stratum);
      const depth = Math.min(...strata, state.peeled[side]);
      // The rail comes out to the outermost thing that lies there again; what was peeled
      // below it and is no step's business stays away.
      for (const part of this.parts)
        if (
          (!part.side || part.side === side) &&
          part.stratum >= depth &&
          part.stratum < state.peeled[side] &&
          !back.has(part.number) &&
          isGone(part, state)
        )
          state.removed.add(part.number);
      state.peeled[side] = depth;
      for (const stratum of strata) state.off[side].delete(stratum);
      for (const each of steps) state.ticked[side].delete(each.id);
      for (const n of back) {
        state.removed.delete(n);
        state.hidden.delete(n);
      }
    }
  }
}

// Letters only, small, without accents: "Musculus trapézius" finds "musculus trapezius".
export function plainLetters(text) {
  return text
    .normalize("NFD")
    .replace(/[\u0300-\u036f]/g, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, " ")
    .trim();
}

export function found(index, words, limit = 40) {
  const wanted = plainLetters(words);
  if (!wanted) return index.slice(0, 400);
  const pieces = wanted.split(" ");
  const ranked = [];
  for (const each of index) {
    let best = 0;
    for (const name of each.plain) {
      if (name === wanted) best = Math.max(best, 4);
      else if (name.startsWith(wanted)) best = Math.max(best, 3);
      else if ((" " + name).includes(" " + wanted)) best = Math.max(best, 2);
      else if (pieces.every((piece) => name.includes(piece))) best = Math.max(best, 1);
    }
    if (best) ranked.push([best, each]);
  }
  return ranked
    .sort((a, b) => b[0] - a[0] || a[1].title.length - b[1].title.length)
    .slice(0, limit)
    .map((pair) => pair[1]);
}
