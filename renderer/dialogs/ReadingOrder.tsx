import { useId } from 'react';

interface ReadingOrderProps {
  readonly blind: boolean;
  onBlind(blind: boolean): void;
}

const ORDERS = [
  {
    blind: true,
    words: 'Blind first',
    hint: 'You see the captures, the temperatures and the vehicle, mark your own windows and sign. Then you see the rest.',
  },
  {
    blind: false,
    words: 'Everything at once',
    hint: 'With what the first reader marked, noted and signed, and with what the program says.',
  },
] as const;

/** In which order a received vehicle is read: blind first, or with all that its first reader and the program came to. */
export function ReadingOrder({ blind, onBlind }: ReadingOrderProps) {
  const name = useId();
  return (
    <fieldset className="readingOrder">
      <legend>How you read it</legend>
      {ORDERS.map((order) => (
        <label key={order.words}>
          <input type="radio" name={name} checked={blind === order.blind} onChange={() => onBlind(order.blind)} />
          <span>
            {order.words}
            <span className="soft">{order.hint}</span>
          </span>
        </label>
      ))}
      <p className="soft">
        Whoever has seen an opinion tends to agree with it. You may look at any time; the record then says when. This is
        courtesy and honest book-keeping, not secrecy: the bundle holds all of it, and any editor shows it.
      </p>
    </fieldset>
  );
}
