import { useEffect, useRef } from 'react';
import { ScrollStop } from '../widgets/ScrollStop.tsx';

interface SheetPreviewProps {
  readonly html: string;
  readonly title: string;
}

/**
 * Shows a finished sheet with its own style, apart from the page's. The sheet is parsed without running anything, its
 * style goes in as a style sheet object, because the page's policy takes no style from text.
 */
export function SheetPreview({ html, title }: SheetPreviewProps) {
  const home = useRef<HTMLElement>(null);
  useEffect(() => {
    if (home.current === null) return;
    const root = home.current.shadowRoot ?? home.current.attachShadow({ mode: 'open' });
    // The style is taken out first: a parsed document is under the page's policy, too, and would complain of it.
    const styles = [...html.matchAll(STYLE)].map(([, text = '']) => shadowed(text));
    const sheet = new DOMParser().parseFromString(html.replaceAll(STYLE, ''), 'text/html');
    const style = new CSSStyleSheet();
    style.replaceSync(styles.join('\n'));
    root.adoptedStyleSheets = [style];
    const page = document.createElement('html');
    const body = document.createElement('body');
    for (const node of sheet.body.childNodes) {
      if (node.nodeName !== 'SCRIPT') body.append(document.importNode(node, true));
    }
    page.append(body);
    root.replaceChildren(page);
  }, [html]);
  return (
    <ScrollStop className="sheetPreview" label={`Preview of ${title}`}>
      <article ref={home} />
    </ScrollStop>
  );
}

const STYLE = /<style[^>]*>([\s\S]*?)<\/style>/g;

/** In a shadow tree the root is the host. */
function shadowed(style: string): string {
  return style.replaceAll(':root', ':host');
}
