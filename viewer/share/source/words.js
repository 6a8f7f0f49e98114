// The words of the page in its language. The source of every text is English; Python reads the
// calls of `told` out of these files and sends the translations along.

let table = {};

export function speak(words) {
  table = words;
}

export function told(text, gaps = {}) {
  return (table[text] ?? text).replace(/\{(\w+)\}/g, (whole, name) => gaps[name] ?? whole);
}
