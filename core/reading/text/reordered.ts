/** Values in another order: place i gets the value that stood at order[i]. Same width as before. */
export function reordered(values: Float32Array | Float64Array, order: Uint32Array): Float32Array | Float64Array {
  const sorted = values instanceof Float32Array ? new Float32Array(order.length) : new Float64Array(order.length);
  for (let i = 0; i < order.length; i++) sorted[i] = values[order[i] ?? 0] ?? Number.NaN;
  return sorted;
}
