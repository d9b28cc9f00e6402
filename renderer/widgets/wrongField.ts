/**
 * Puts the focus into the first field of the open dialog whose words are wrong, and says whether there is one. What stands in
 * such a field is not what is kept: a form that went on would take the value from before.
 */
export function goToWrongField(page: Pick<Document, 'querySelector'>): boolean {
  const field = page.querySelector<HTMLElement>('dialog [aria-invalid="true"]');
  field?.focus();
  return field !== null;
}
