// node read-3mf.mjs FILE...
// Reads 3MF with a general loader made by others for showing models, and prints one JSON line a file: what is to be printed, placed.
import { readFileSync } from 'node:fs';
import { DOMParser } from 'linkedom';
import { ThreeMFLoader } from 'three/examples/jsm/loaders/3MFLoader.js';
import { Vector3 } from 'three';

// The loader is written for browsers; the parser is all it asks of one.
globalThis.DOMParser = DOMParser;

function solid(mesh) {
  const place = mesh.geometry.getAttribute('position'), index = mesh.geometry.getIndex();
  const count = index ? index.count : place.count;
  const at = i => new Vector3().fromBufferAttribute(place, index ? index.getX(i) : i).applyMatrix4(mesh.matrixWorld);
  const low = new Vector3(Infinity, Infinity, Infinity), high = low.clone().negate();
  let volume = 0; // about the origin: an object of several materials comes as several open meshes, whose sums close only together
  for (let i = 0; i < count; i += 3) {
    const [a, b, c] = [at(i), at(i + 1), at(i + 2)];
    for (const p of [a, b, c]) { low.min(p); high.max(p); }
    volume += a.dot(b.cross(c)) / 6;
  }
  return { triangles: count / 3, volume, low: low.toArray(), high: high.toArray() };
}

for (const file of process.argv.slice(2)) {
  const bytes = readFileSync(file);
  const group = new ThreeMFLoader().parse(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length));
  group.updateMatrixWorld(true);
  const items = group.children.map(item => {
    const parts = [], colours = new Set();
    item.traverse(node => {
      if (!node.isMesh) return;
      parts.push(solid(node));
      for (const m of [node.material].flat()) if (m?.color) colours.add(m.color.getHexString());
    });
    const spread = (pick, best) => [0, 1, 2].map(i => Math[best](...parts.map(p => p[pick][i])));
    return {
      name: item.name || item.children[0]?.name || '',
      triangles: parts.reduce((s, p) => s + p.triangles, 0),
      volume: parts.reduce((s, p) => s + p.volume, 0),
      low: spread('low', 'min'), high: spread('high', 'max'), colours: [...colours].sort(),
    };
  });
  console.log(JSON.stringify({ file, items }));
}
