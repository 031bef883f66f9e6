// node stl-strict.mjs FILE...
// Reads binary STL and prints one JSON line a file. Corners are one when their 32-bit floats are equal bit for bit (minus nought
// counts as nought), so nothing is healed on the way in. Every directed edge must be met by as many the other way.
import { readFileSync } from 'node:fs';

const HEADER = 84, FACET = 50;

// Numbers for corners, the same for the same bits: a table with open places, since a million keys made of text take seconds.
class Corners {
  constructor(most) {
    let size = 1024;
    while (size < 2 * most) size *= 2;
    this.mask = size - 1;
    this.slots = new Int32Array(size).fill(-1);
    this.bits = new Int32Array(3 * most);
    this.places = new Float32Array(this.bits.buffer);
    this.count = 0;
  }

  number(x, y, z) {
    let slot = Math.imul(x, 0x9e3779b1) ^ Math.imul(y, 0x85ebca6b) ^ Math.imul(z, 0xc2b2ae35);
    slot = (slot ^ (slot >>> 15)) & this.mask;
    for (;; slot = (slot + 1) & this.mask) {
      const known = this.slots[slot];
      if (known < 0) break;
      if (this.bits[3 * known] === x && this.bits[3 * known + 1] === y && this.bits[3 * known + 2] === z) return known;
    }
    this.bits[3 * this.count] = x;
    this.bits[3 * this.count + 1] = y;
    this.bits[3 * this.count + 2] = z;
    return this.slots[slot] = this.count++;
  }
}

function examine(file) {
  const bytes = readFileSync(file), view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const count = bytes.length >= HEADER ? bytes.readUInt32LE(80) : -1;
  if (count < 0 || bytes.length !== HEADER + FACET * count) return { file, fault: `length ${bytes.length} does not fit ${count} facets` };

  const corners = new Corners(3 * count), at = corners.places, ends = new Int32Array(3 * count);
  const bits = offset => { const b = view.getInt32(offset, true); return b === -0x80000000 ? 0 : b; };
  const n = [0, 0, 0];
  let attributes = 0, slantedNormals = 0;
  for (let facet = 0; facet < count; facet++) {
    const start = HEADER + FACET * facet;
    for (let corner = 0; corner < 3; corner++) {
      const place = start + 12 + 12 * corner;
      for (let axis = 0; axis < 3; axis++)
        if (!Number.isFinite(view.getFloat32(place + 4 * axis, true))) return { file, fault: `facet ${facet} has a coordinate that is no number` };
      ends[3 * facet + corner] = corners.number(bits(place), bits(place + 4), bits(place + 8));
    }
    attributes += view.getUint16(start + 48, true) !== 0;
    normal(facet);
    const size = Math.hypot(n[0], n[1], n[2]);
    let along = 0;
    for (let axis = 0; axis < 3; axis++) along += view.getFloat32(start + 4 * axis, true) * n[axis] / size;
    if (size > 1e-3 && along < 0.99) slantedNormals++;
  }

  // Twice the facet's area along its normal, into n.
  function normal(facet) {
    const a = 3 * ends[3 * facet], b = 3 * ends[3 * facet + 1], c = 3 * ends[3 * facet + 2];
    const ux = at[b] - at[a], uy = at[b + 1] - at[a + 1], uz = at[b + 2] - at[a + 2];
    const vx = at[c] - at[a], vy = at[c + 1] - at[a + 1], vz = at[c + 2] - at[a + 2];
    n[0] = uy * vz - uz * vy;
    n[1] = uz * vx - ux * vz;
    n[2] = ux * vy - uy * vx;
  }

  // An edge by its two corners, odd where it runs from the lower number to the higher; sorted, all that share one stand together.
  const edges = new Float64Array(3 * count);
  let degenerate = 0, volume = 0, told = 0;
  for (let facet = 0; facet < count; facet++) {
    const i = ends[3 * facet], j = ends[3 * facet + 1], k = ends[3 * facet + 2];
    if (i === j || j === k || k === i) { degenerate++; continue; }
    normal(facet);
    volume += (n[0] * (at[3 * i] - at[0]) + n[1] * (at[3 * i + 1] - at[1]) + n[2] * (at[3 * i + 2] - at[2])) / 6;
    for (const [from, to] of [[i, j], [j, k], [k, i]])
      edges[told++] = 2 * (Math.min(from, to) * corners.count + Math.max(from, to)) + (from < to ? 1 : 0);
  }

  const sorted = edges.subarray(0, told).sort();
  let openEdges = 0, crowdedEdges = 0;
  for (let first = 0, last; first < told; first = last) {
    const edge = Math.floor(sorted[first] / 2);
    let balance = 0;
    for (last = first; last < told && Math.floor(sorted[last] / 2) === edge; last++) balance += sorted[last] % 2 === 1 ? 1 : -1;
    openEdges += balance !== 0;
    crowdedEdges += last - first > 2;
  }

  const box = [0, 1, 2].map(axis => {
    let low = Infinity, high = -Infinity;
    for (let i = axis; i < 3 * corners.count; i += 3) { low = Math.min(low, at[i]); high = Math.max(high, at[i]); }
    return [low, high];
  });
  return {
    file, triangles: count, vertices: corners.count, degenerate, attributes, slantedNormals, volume, box, openEdges, crowdedEdges,
    beginsWithSolid: bytes.subarray(0, 5).toString('latin1').toLowerCase() === 'solid',
  };
}

for (const file of process.argv.slice(2)) console.log(JSON.stringify(examine(file)));
