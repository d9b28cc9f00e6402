// The part of the reference parser that the tests use; the package brings no types.

declare module 'commonmark' {
  interface Node {
    readonly type: string;
  }
  interface Walk {
    readonly entering: boolean;
    readonly node: Node;
  }
  class Parser {
    parse(text: string): { walker(): { next(): Walk | null } };
  }
}
