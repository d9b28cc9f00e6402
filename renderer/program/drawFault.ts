/**
 * Stands in the place of a page that could not be drawn: an empty window would say nothing. What is unsaved is still saved by
 * itself, because only the drawing has ended.
 */
export function drawFault(page: HTMLElement): void {
  const { ownerDocument } = page;
  const words = (kind: 'h1' | 'p', text: string): HTMLElement => {
    const element = ownerDocument.createElement(kind);
    element.textContent = text;
    return element;
  };
  const told = ownerDocument.createElement('main');
  told.className = 'nothingShown';
  told.setAttribute('role', 'alert');
  told.append(
    words('h1', 'The window could not be drawn, through a fault of the program.'),
    words('p', 'Your work is kept and saved by itself. Close this window and start the program anew.'),
  );
  page.replaceChildren(told);
}
