/**
 * A function that computes its answer once per argument and remembers it for as long as the argument lives. From
 * outside it cannot be told from the function it wraps, as long as that function is pure and its argument is never
 * changed: both hold for everything in core. It lets a dozen measures ask for the same switches without passing them
 * around.
 */
export function remember<Argument extends object, Answer>(
  compute: (argument: Argument) => Answer,
): (argument: Argument) => Answer {
  const answers = new WeakMap<Argument, { readonly answer: Answer }>();
  return (argument) => {
    const known = answers.get(argument);
    if (known) return known.answer;
    const answer = compute(argument);
    answers.set(argument, { answer });
    return answer;
  };
}
