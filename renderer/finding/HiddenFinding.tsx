/** Where a finding would stand while the vehicle is read blind. */
export function HiddenFinding() {
  return (
    <p>
      What the program says of it is hidden while you read blind. It is worked out, and shown once you have signed or
      looked.
    </p>
  );
}
