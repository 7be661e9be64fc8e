/** A sheet's SVG text as a node of the page. The text is parsed as XML, and only what sheets are made of is let through. */

const elements = new Set(['svg', 'rect', 'g', 'path', 'text', 'clipPath', 'a']);

const attributes = new Set(
  [
    'd fill fill-rule stroke stroke-width stroke-linejoin stroke-linecap stroke-dasharray paint-order clip-rule clip-path',
    'x y width height viewBox transform font-family font-size font-weight font-style text-anchor',
    'textLength lengthAdjust text-rendering',
    'id href data-sheet role aria-level aria-label',
  ].flatMap((row) => row.split(' ')),
);

/** Attributes whose value could lead somewhere, and what they may lead to. */
const leads: Readonly<Record<string, RegExp>> = {
  href: /^(https:\/\/|mailto:)/,
  'clip-path': /^url\(#[\w-]+\)$/,
  fill: /^(#[0-9a-f]{3,8}|none)$/i,
  stroke: /^(#[0-9a-f]{3,8}|none)$/i,
};

/** A new node each time. Throws when the text is no SVG. */
export function sheetNode(svg: string): SVGSVGElement {
  const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
  if (parsed.localName !== 'svg' || !(parsed instanceof SVGSVGElement))
    throw new Error('a sheet could not be read back');
  const node = document.importNode(parsed, true);
  clean(node);
  return node;
}

/** The sheet as one picture with a name: for the preview, whose words stand in the list beside it. */
export function sheetPicture(svg: string, label: string): SVGSVGElement {
  const node = sheetNode(svg);
  for (const inner of node.querySelectorAll('[role], [aria-label]'))
    for (const name of ['role', 'aria-level', 'aria-label']) inner.removeAttribute(name);
  for (const link of node.querySelectorAll('a')) link.removeAttribute('href');
  node.setAttribute('role', 'img');
  node.setAttribute('aria-label', label);
  return node;
}

function clean(element: Element): void {
  for (const { name, value } of [...element.attributes])
    if (name !== 'xmlns' && !(attributes.has(name) && (leads[name]?.test(value) ?? true)))
      element.removeAttribute(name);
  for (const child of [...element.children]) {
    if (child.namespaceURI === element.namespaceURI && elements.has(child.localName)) clean(child);
    else child.remove();
  }
}
