// Empty on purpose. One dependency's types refer to Node's; resolving that reference here, to nothing,
// keeps `process` and `node:fs` compile errors everywhere in core.
