/** What every dialog is given. */
export interface DialogProps {
  onClose(): void;
}
