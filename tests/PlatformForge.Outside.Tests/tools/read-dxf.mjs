// node read-dxf.mjs FILE
// Reads a DXF with a parser made by others and prints one JSON line a layer: every piece of it as points close together.
import { readFileSync } from 'node:fs';
import DxfParser from 'dxf-parser';

const STEPS = 4000; // of a curve
const along = f => Array.from({ length: STEPS + 1 }, (_, i) => f(i / STEPS));
const arc = (c, r, from, sweep) => along(t => [c.x + r * Math.cos(from + sweep * t), c.y + r * Math.sin(from + sweep * t)]);

function bulged(a, b, bulge) {
  const chord = [b.x - a.x, b.y - a.y];
  if (!bulge) return along(t => [a.x + chord[0] * t, a.y + chord[1] * t]);
  const sweep = 4 * Math.atan(bulge), half = (1 / bulge - bulge) / 4; // of the chord: from its middle to the centre, to the left
  const centre = { x: (a.x + b.x) / 2 - chord[1] * half, y: (a.y + b.y) / 2 + chord[0] * half };
  return arc(centre, Math.hypot(a.x - centre.x, a.y - centre.y), Math.atan2(a.y - centre.y, a.x - centre.x), sweep);
}

// C. de Boor's rule.
function spline({ degreeOfSplineCurve: p, knotValues: u, controlPoints: c }) {
  const low = u[p], high = u[c.length];
  return along(t => {
    const x = Math.min(low + (high - low) * t, high - 1e-12 * (high - low));
    let k = p;
    while (u[k + 1] <= x) k++;
    const d = Array.from({ length: p + 1 }, (_, j) => [c[j + k - p].x, c[j + k - p].y]);
    for (let r = 1; r <= p; r++)
      for (let j = p; j >= r; j--) {
        const w = (x - u[j + k - p]) / (u[j + 1 + k - r] - u[j + k - p]);
        d[j] = [0, 1].map(i => (1 - w) * d[j - 1][i] + w * d[j][i]);
      }
    return d[p];
  });
}

function points(e) {
  switch (e.type) {
    case 'LINE': return bulged(e.vertices[0], e.vertices[1], 0);
    case 'ARC': return arc(e.center, e.radius, e.startAngle, (e.endAngle - e.startAngle + 4 * Math.PI) % (2 * Math.PI));
    case 'LWPOLYLINE':
    case 'POLYLINE': return e.vertices.slice(1).flatMap((v, i) => bulged(e.vertices[i], v, e.vertices[i].bulge));
    case 'SPLINE': return spline(e);
    default: return null;
  }
}

const drawing = new DxfParser().parseSync(readFileSync(process.argv[2], 'utf8'));
const layers = new Map();
for (const e of drawing.entities) {
  const line = points(e);
  if (!line) continue;
  const layer = layers.get(e.layer) ?? { layer: e.layer, units: drawing.header.$INSUNITS, kinds: [], x: [], y: [] };
  layer.kinds.push(e.type);
  for (const p of line) {
    layer.x.push(p[0]);
    layer.y.push(p[1]);
  }
  layers.set(e.layer, layer);
}
for (const layer of layers.values()) console.log(JSON.stringify(layer));
