// Small help with the document.

export function element(tag, fields = {}, ...children) {
  const node = Object.assign(document.createElement(tag), fields);
  node.append(...children);
  return node;
}
