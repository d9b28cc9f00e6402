// What readers sign is joined into a chain: each link carries the hash of the one before it and of the record its signer was
// given (T-EV-5). Hashes are made by the caller: core has no digest of its own.

import { canonicalJson } from '../record/canonical.ts';
import type { Signed } from '../record/opinionSchema.ts';
import type { VehicleRecord } from '../record/schema.ts';

/** SHA-256 of a text in UTF-8, as 64 small hexadecimal digits. */
export type Sha256 = (text: string) => Promise<string>;

/**
 * 'whole': joined to the first link by every link between, and vouched for by the next one where there is one.
 * 'beforeBreak': joined to the first link, but no later one vouches for it though there are some: it, or one that stood
 * behind it, was changed or taken away. 'broken': what it was joined to is not here as it was.
 */
export type LinkState = 'whole' | 'beforeBreak' | 'broken';

export interface CheckedLink {
  readonly entry: Signed;
  readonly state: LinkState;
  /** SHA-256 of the canonical JSON of the entry. */
  readonly sha256: string;
  /** Whether the record, without its opinions, still is what the signer was given. */
  readonly sameRecord: boolean;
}

/**
 * Checks everything that was signed. The links come in the order of the chain; those that are not joined to its first link
 * come last, by the time they give. A change, a removal or an insertion leaves every later link 'broken'. The last link is
 * vouched for by nobody yet: a change of it alone is seen only by whoever has its hash from elsewhere.
 */
export async function checkOpinions(record: VehicleRecord, sha256: Sha256): Promise<CheckedLink[]> {
  const given = await givenOf(record, sha256);
  const hashed = await Promise.all(
    Object.values(record.opinions).map(async (entry) => ({
      entry,
      sha256: await sha256(canonicalJson(entry)),
      sameRecord: entry.given === given,
    })),
  );
  const joined: typeof hashed = [];
  for (
    let next = successors(hashed, null);
    next.length === 1;
    next = successors(hashed, joined.at(-1)?.sha256 ?? null)
  ) {
    joined.push(...next);
  }
  const rest = hashed.filter((one) => !joined.includes(one)).sort((a, b) => inTime(a.entry, b.entry));
  const end = joined.length - 1;
  return [
    ...joined.map((one, i) => ({
      ...one,
      state: i === end && rest.length > 0 ? ('beforeBreak' as const) : ('whole' as const),
    })),
    ...rest.map((one) => ({ ...one, state: 'broken' as const })),
  ];
}

/** What the next link must carry: hash of the record as it stands, and of the last link. */
export async function nextLink(record: VehicleRecord, sha256: Sha256): Promise<Pick<Signed, 'given' | 'previous'>> {
  const links = await checkOpinions(record, sha256);
  return { given: await givenOf(record, sha256), previous: links.at(-1)?.sha256 ?? null };
}

/** The links that say they were signed right after the one with this hash. More than one is a fork, and joined to neither. */
function successors<T extends { entry: Signed }>(links: readonly T[], previous: string | null): T[] {
  return links.filter(({ entry }) => entry.previous === previous);
}

/**
 * The form of the record in which signers are given it. Version 3 added only the blind reading, which is no part of it: what
 * was signed before goes on to say that the record is the same.
 */
const GIVEN_VERSION = 2;

function givenOf({ opinions: _, blindReading: __, ...given }: VehicleRecord, sha256: Sha256): Promise<string> {
  return sha256(canonicalJson({ ...given, version: GIVEN_VERSION }));
}

function inTime(a: Signed, b: Signed): number {
  return Date.parse(a.signedAt) - Date.parse(b.signedAt) || (a.id < b.id ? -1 : 1);
}
