import type { Page } from '@playwright/test';

/**
 * What is wrong with the boxes of the page as it stands, one line a fault; empty when nothing is cut, overlaps, is too small
 * to meet or too small to read. `targetPx` is the least height of a thing to press; the chairs of the seat plan, which is true
 * to scale, may be met within 32 px each way, and no two of them within the same.
 */
export const faultsOfLayout = (app: Page, targetPx: number): Promise<string[]> =>
  app.evaluate((least) => {
    const ACTIVE =
      'button, input, select, textarea, summary, a[href], [role="treeitem"], [role="slider"], [tabindex="0"]';
    /** What the keyboard reaches to scroll it. */
    const REACHED = '[tabindex="0"]';
    const CHAIR = '.chair';
    const CHAIR_PX = Math.min(least, 32);
    const faults: string[] = [];
    // What hangs over the rest for a moment may cover it.
    const root = document.querySelector<HTMLElement>('dialog[open], .add-menu') ?? document.body;
    const seen = (node: Element): boolean =>
      node.checkVisibility({ visibilityProperty: true, opacityProperty: false }) &&
      !node.closest('.unseen, [inert], [hidden]');
    const named = (node: Element): string => {
      const words =
        node.getAttribute('aria-label') || node.textContent?.trim() || (node as HTMLInputElement).name || '';
      return `${node.tagName.toLowerCase()}.${node.getAttribute('class') ?? ''} "${words.slice(0, 40)}"`;
    };
    const sized = (box: DOMRect): string =>
      `${Math.round(box.width)} x ${Math.round(box.height)} at ${Math.round(box.x)},${Math.round(box.y)}`;

    if (document.documentElement.scrollWidth > innerWidth)
      faults.push(`the page is ${document.documentElement.scrollWidth} wide`);

    // What is scrolled away is not there to be met; what its scrolling parent cuts sideways never is.
    const clipOf = (node: Element) => {
      const clip = { left: 0, top: 0, right: innerWidth, bottom: innerHeight, sideways: [] as Element[] };
      for (let up = node.parentElement; up && up !== document.body; up = up.parentElement) {
        const { overflowX, overflowY } = getComputedStyle(up);
        const box = up.getBoundingClientRect();
        if (overflowY !== 'visible') {
          clip.top = Math.max(clip.top, box.top);
          clip.bottom = Math.min(clip.bottom, box.bottom);
        }
        if (overflowX === 'auto' || overflowX === 'scroll') {
          if (up.scrollWidth > up.clientWidth + 1) clip.sideways.push(up);
        }
        if (overflowX !== 'visible') {
          clip.left = Math.max(clip.left, box.left);
          clip.right = Math.min(clip.right, box.right);
        }
      }
      return clip;
    };

    const all = [...root.querySelectorAll<HTMLElement>(ACTIVE)].filter((node) => seen(node) && !node.closest('.stage'));
    const met: { node: HTMLElement; box: DOMRect }[] = [];
    const chairs: { node: HTMLElement; box: DOMRect }[] = [];
    for (const node of all) {
      const hidden = getComputedStyle(node).opacity === '0';
      const marked = node.matches('[type="checkbox"], [type="radio"]');
      const held = hidden || marked ? (node.closest('label') ?? node) : node;
      const box = held.getBoundingClientRect();
      if (box.width < 2 || box.height < 2) continue;
      const clip = clipOf(held);
      const middle = box.top + box.height / 2;
      const inView = middle > clip.top && middle < clip.bottom;
      const sideways = clip.sideways.some((parent) => parent.matches(REACHED));
      if (!sideways && (box.left < clip.left - 1 || box.right > clip.right + 1))
        faults.push(
          `cut sideways: ${named(held)} ${sized(box)}, room from ${Math.round(clip.left)} to ${Math.round(clip.right)}`,
        );
      if (inView && ((clip.bottom >= innerHeight && box.bottom > innerHeight + 1) || (clip.top <= 0 && box.top < -1)))
        faults.push(`outside the window: ${named(held)} ${sized(box)}`);
      const before = getComputedStyle(held, '::before');
      const grows = before.position === 'absolute' && before.content !== 'none';
      const wider = grows ? -2 * Math.min(0, Number.parseFloat(before.left) || 0) : 0;
      const higher = grows ? -2 * Math.min(0, Number.parseFloat(before.top) || 0) : 0;
      // A label is part of what it names; what takes no pointer is met through the drawing under it.
      const label = marked ? ((held as HTMLInputElement).labels?.[0]?.getBoundingClientRect().height ?? 0) : 0;
      const height = Math.max(box.height + higher, label);
      const width = box.width + wider;
      const chair = node.matches(CHAIR);
      if (chair) chairs.push({ node, box: new DOMRect(box.x - wider / 2, box.y - higher / 2, width, height) });
      const throughDrawing = getComputedStyle(held).pointerEvents === 'none';
      const scrolling = node.getAttribute('tabindex') === '0' && !node.matches('button, input, select, [role]');
      if (
        !scrolling &&
        !throughDrawing &&
        (height < (chair ? CHAIR_PX : least) - 0.5 || width < (chair ? CHAIR_PX : 24) - 0.5)
      )
        faults.push(`too small to meet: ${named(held)} ${sized(box)}`);
      const top = Math.max(box.top, clip.top);
      const shown = new DOMRect(box.left, top, box.width, Math.min(box.bottom, clip.bottom) - top);
      if (inView) met.push({ node: held, box: shown });
    }

    // Two things to press in one another's way: the middle of one is covered by something it has nothing to do with.
    for (const { node, box } of met) {
      const at = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
      const other = at?.closest(ACTIVE) ?? at;
      if (!other || node.contains(other) || other.contains(node) || at?.contains(node)) continue;
      if (node.matches(':disabled') || getComputedStyle(node).pointerEvents === 'none') continue;
      if (other.closest('label')?.contains(node) || node.closest('label')?.contains(other)) continue;
      faults.push(`covered: ${named(node)} ${sized(box)} by ${named(other)}`);
    }
    for (const [i, a] of chairs.entries()) {
      for (const b of chairs.slice(i + 1)) {
        const wide = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
        const high = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
        if (wide > 1 && high > 1) faults.push(`met in one place: ${named(a.node)} and ${named(b.node)}`);
      }
    }
    for (let i = 0; i < met.length; i += 1) {
      for (let j = i + 1; j < met.length; j += 1) {
        const [a, b] = [met[i], met[j]];
        if (a.node === b.node || a.node.contains(b.node) || b.node.contains(a.node)) continue;
        const wide = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
        const high = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
        const apart =
          a.node.closest('.plan-board, .selection-bar, .float, dialog') !==
          b.node.closest('.plan-board, .selection-bar, .float, dialog');
        if (wide > 2 && high > 2 && !apart && !a.node.closest('svg'))
          faults.push(`overlap: ${named(a.node)} ${sized(a.box)} and ${named(b.node)} ${sized(b.box)}`);
      }
    }

    const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
    const looked = new Set<Element>();
    for (let text = walker.nextNode(); text; text = walker.nextNode()) {
      const node = text.parentElement;
      if (
        !node ||
        node.closest('.stage') ||
        looked.has(node) ||
        !text.textContent?.trim() ||
        node.closest('script, style, option') ||
        !seen(node)
      )
        continue;
      looked.add(node);
      const style = getComputedStyle(node);
      const words = text.textContent.trim().slice(0, 40);
      if (Number.parseFloat(style.fontSize) < 11.99)
        faults.push(`${style.fontSize} letters: ${named(node)} "${words}"`);
      const range = document.createRange();
      range.selectNodeContents(text);
      const box = range.getBoundingClientRect();
      if (box.width < 1) continue;
      const clip = clipOf(node);
      for (let up: Element | null = node; up && up !== document.body; up = up.parentElement) {
        const around = getComputedStyle(up);
        if (around.overflowX === 'auto' || around.overflowX === 'scroll') break;
        if (around.overflowX !== 'hidden' && around.overflowX !== 'clip') continue;
        const edge = up.getBoundingClientRect();
        if (box.right <= edge.right + 1 && box.left >= edge.left - 1) continue;
        const whole = up.closest('[aria-label], [title]');
        const said = `${whole?.getAttribute('aria-label') ?? ''}${whole?.getAttribute('title') ?? ''}`;
        if (!(around.textOverflow === 'ellipsis' && said.includes(words)))
          faults.push(`clipped: "${words}" in ${named(up)} ${sized(edge)}`);
        break;
      }
      const scrollsSideways = clip.sideways.length > 0;
      if (!scrollsSideways && (box.right > innerWidth + 1 || box.left < -1))
        faults.push(`text outside the window: "${words}" ${sized(box)}`);
      if (scrollsSideways && !clip.sideways.some((parent) => parent.matches(REACHED)))
        faults.push(`scrolls sideways without a way to: ${named(clip.sideways[0])}`);
    }
    for (const field of root.querySelectorAll<HTMLInputElement>(
      'input:not([type="radio"], [type="checkbox"], [type="range"], [type="file"])',
    )) {
      if (seen(field) && field.scrollWidth > field.clientWidth + 1)
        faults.push(`clipped in its field: ${field.value} ${field.outerHTML.slice(0, 80)}`);
    }
    return [...new Set(faults)];
  }, targetPx);
