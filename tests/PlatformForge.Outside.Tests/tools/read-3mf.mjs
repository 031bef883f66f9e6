// node read-3mf.mjs FILE...
// Reads 3MF with a general loader made by others for showing models, and prints one JSON line a file: what is to be printed, placed.
import { readFileSync } from 'node:fs';
import { DOMParser } from './xml-tree.mjs';
import { ThreeMFLoader } from 'three/examples/jsm/loaders/3MFLoader.js';
import { Color, Vector3 } from 'three';

// The loader is written for browsers; the parser is all it asks of one.
globalThis.DOMParser = DOMParser;

// Area by colour: of each triangle that of its own material, as it would be shown.
function shown(mesh, areas) {
  const place = mesh.geometry.getAttribute('position'), index = mesh.geometry.getIndex(), colour = mesh.geometry.getAttribute('color');
  const count = index ? index.count : place.count;
  const at = i => new Vector3().fromBufferAttribute(place, index ? index.getX(i) : i).applyMatrix4(mesh.matrixWorld);
  const groups = Array.isArray(mesh.material) ? mesh.geometry.groups : [{ start: 0, count, materialIndex: 0 }];
  for (const { start, count, materialIndex } of groups) {
    const own = Array.isArray(mesh.material) ? mesh.material[materialIndex] : mesh.material;
    for (let i = start; i < start + count; i += 3) {
      const [a, b, c] = [at(i), at(i + 1), at(i + 2)];
      const hex = colour ? new Color().fromBufferAttribute(colour, index ? index.getX(i) : i).getHexString() : own.color.getHexString();
      areas[hex] = (areas[hex] ?? 0) + b.sub(a).cross(c.sub(a)).length() / 2;
    }
  }
}

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
    const parts = [], colours = new Set(), areas = {};
    item.traverse(node => {
      if (!node.isMesh) return;
      parts.push(solid(node));
      shown(node, areas);
      for (const m of [node.material].flat()) if (m?.color) colours.add(m.color.getHexString());
    });
    const spread = (pick, best) => [0, 1, 2].map(i => Math[best](...parts.map(p => p[pick][i])));
    return {
      name: item.name || item.children[0]?.name || '',
      triangles: parts.reduce((s, p) => s + p.triangles, 0),
      volume: parts.reduce((s, p) => s + p.volume, 0),
      low: spread('low', 'min'), high: spread('high', 'max'), colours: [...colours].sort(), areas,
    };
  });
  console.log(JSON.stringify({ file, items }));
}
