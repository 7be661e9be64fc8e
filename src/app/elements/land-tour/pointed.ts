/** What each card of the walk-through speaks of, to be ringed on the screen: selectors, the first that is seen is taken. */
export const pointed: readonly (readonly string[])[] = [
  ['mp-slips'],
  ['[data-do="draw"]'],
  ['mp-land-list'],
  ['mp-slips .history', 'mp-slips .phone'],
  ['#tab-posts'],
  ['[data-page="new"]'],
];

/** The first element under `root`, through every shadow, that fits and is seen. */
export function seenElement(root: ParentNode, selectors: readonly string[]): HTMLElement | null {
  for (const selector of selectors) {
    const found = deep(root, selector).find((element) => {
      const { width, height } = element.getBoundingClientRect();
      return width > 0 && height > 0;
    });
    if (found) return found;
  }
  return null;
}

/** The last part of the selector is looked for in the shadow of what the first fits. */
function deep(root: ParentNode, selector: string): HTMLElement[] {
  const [own, inner] = selector.split(' ');
  const found: HTMLElement[] = [];
  for (const element of root.querySelectorAll<HTMLElement>('*')) {
    if (own && element.matches(own)) {
      const hit = inner ? element.shadowRoot?.querySelector<HTMLElement>(inner) : element;
      if (hit) found.push(hit);
    }
    if (element.shadowRoot) found.push(...deep(element.shadowRoot, selector));
  }
  return found;
}
