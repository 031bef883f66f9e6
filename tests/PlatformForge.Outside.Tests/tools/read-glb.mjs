// node read-glb.mjs FILE...
// Holds glTF files against the validator of those who keep the standard, reads them with a general loader for viewers, and prints one JSON line a file:
// the validator's issues, and every mesh where it stands, in metres, y upwards.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { GLTFLoader } from 'three/examples/jsm/loaders/GLTFLoader.js';
import { Vector3 } from 'three';

const { validateBytes } = createRequire(import.meta.url)('gltf-validator');
globalThis.self = globalThis;

// About the node's own place, so that a metre's single precision is not lost in sums of products.
function solid(node, about) {
  const place = node.geometry.getAttribute('position'), index = node.geometry.getIndex();
  const at = i => new Vector3().fromBufferAttribute(place, index.getX(i)).applyMatrix4(node.matrixWorld);
  const low = new Vector3(Infinity, Infinity, Infinity), high = low.clone().negate();
  let volume = 0;
  for (let i = 0; i < index.count; i += 3) {
    const [a, b, c] = [at(i), at(i + 1), at(i + 2)];
    for (const p of [a, b, c]) { low.min(p); high.max(p); }
    volume += a.sub(about).dot(b.sub(about).cross(c.sub(about))) / 6;
  }
  return { triangles: index.count / 3, volume, low: low.toArray(), high: high.toArray(), material: node.material.name, flat: node.material.flatShading };
}

for (const file of process.argv.slice(2)) {
  const bytes = readFileSync(file);
  const { issues } = await validateBytes(new Uint8Array(bytes));
  const { scene } = await new GLTFLoader().parseAsync(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length), '');
  scene.updateMatrixWorld(true);
  const nodes = new Map();
  scene.traverse(node => {
    if (!node.isMesh) return;

    // Several colours come as a group of meshes under the node of the file.
    const named = node.parent.isGroup && node.parent.userData.name === node.parent.parent?.name ? node.parent : node;
    const path = [];
    for (let up = node; up; up = up.parent) if (up.userData.name && path[0] !== up.userData.name) path.unshift(up.userData.name);
    const key = path.join('/');
    if (!nodes.has(key)) nodes.set(key, { path, parts: [], about: new Vector3().setFromMatrixPosition(named.matrixWorld) });
    const entry = nodes.get(key);
    entry.parts.push(solid(node, entry.about));
  });
  const spread = (parts, pick, best) => [0, 1, 2].map(i => Math[best](...parts.map(p => p[pick][i])));
  console.log(JSON.stringify({
    file, issues: issues.messages,
    nodes: [...nodes.values()].map(({ path, parts }) => ({
      path, triangles: parts.reduce((s, p) => s + p.triangles, 0), volume: parts.reduce((s, p) => s + p.volume, 0),
      low: spread(parts, 'low', 'min'), high: spread(parts, 'high', 'max'), materials: parts.map(p => p.material), flat: parts.every(p => p.flat),
    })),
  }));
}
