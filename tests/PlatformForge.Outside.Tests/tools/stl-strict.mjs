// node stl-strict.mjs FILE...
// Reads binary STL and prints one JSON line a file. Corners are one when their 32-bit floats are equal bit for bit (minus nought
// counts as nought), so nothing is healed on the way in. Every directed edge must be met by as many the other way.
import { readFileSync } from 'node:fs';

const HEADER = 84, FACET = 50;

function examine(file) {
  const bytes = readFileSync(file);
  const count = bytes.length >= HEADER ? bytes.readUInt32LE(80) : -1;
  if (count < 0 || bytes.length !== HEADER + FACET * count) return { file, fault: `length ${bytes.length} does not fit ${count} facets` };

  const numbers = new Map(), corners = [], ends = new Int32Array(3 * count);
  let attributes = 0, slantedNormals = 0;
  for (let facet = 0; facet < count; facet++) {
    const at = HEADER + FACET * facet;
    for (let corner = 0; corner < 3; corner++) {
      const p = [0, 4, 8].map(o => bytes.readFloatLE(at + 12 + 12 * corner + o) + 0);
      if (!p.every(Number.isFinite)) return { file, fault: `facet ${facet} has a coordinate that is no number` };
      const key = p.join(' ');
      if (!numbers.has(key)) { numbers.set(key, corners.length); corners.push(p); }
      ends[3 * facet + corner] = numbers.get(key);
    }
    attributes += bytes.readUInt16LE(at + 48) !== 0;
    const stated = [0, 4, 8].map(o => bytes.readFloatLE(at + o)), true_ = normal(facet);
    const size = Math.hypot(...true_);
    if (size > 1e-3 && stated.reduce((s, x, i) => s + x * true_[i] / size, 0) < 0.99) slantedNormals++;
  }

  function normal(facet) {
    const [a, b, c] = [0, 1, 2].map(k => corners[ends[3 * facet + k]]);
    const u = b.map((x, i) => x - a[i]), v = c.map((x, i) => x - a[i]);
    return [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
  }

  const balance = new Map(), uses = new Map();
  let degenerate = 0, volume = 0;
  const base = corners[0];
  for (let facet = 0; facet < count; facet++) {
    const ids = [ends[3 * facet], ends[3 * facet + 1], ends[3 * facet + 2]];
    if (new Set(ids).size < 3) { degenerate++; continue; }
    const n = normal(facet), a = corners[ids[0]];
    volume += n.reduce((s, x, i) => s + x * (a[i] - base[i]), 0) / 6;
    for (let k = 0; k < 3; k++) {
      const from = ids[k], to = ids[(k + 1) % 3], low = Math.min(from, to), key = low * corners.length + Math.max(from, to);
      balance.set(key, (balance.get(key) ?? 0) + (from === low ? 1 : -1));
      uses.set(key, (uses.get(key) ?? 0) + 1);
    }
  }

  const box = [0, 1, 2].map(i => corners.reduce(([l, h], p) => [Math.min(l, p[i]), Math.max(h, p[i])], [Infinity, -Infinity]));
  return {
    file, triangles: count, vertices: corners.length, degenerate, attributes, slantedNormals, volume, box,
    openEdges: [...balance.values()].filter(n => n !== 0).length,
    crowdedEdges: [...uses.values()].filter(n => n > 2).length,
    beginsWithSolid: bytes.subarray(0, 5).toString('latin1').toLowerCase() === 'solid',
  };
}

for (const file of process.argv.slice(2)) console.log(JSON.stringify(examine(file)));
