// node write-dxf.mjs FILE
// Writes a track plan in millimetres with a DXF writer made by others: on each layer one line of 1 to 2 metres, told in another way.
import { writeFileSync } from 'node:fs';
import { DxfWriter, Units, point2d, point3d } from '@tarikjabiri/dxf';

const dxf = new DxfWriter();
dxf.setUnits(Units.Millimeters);
for (const layer of ['line', 'arc', 'bulge', 'polyline', 'spline', 'chain', 'notes']) dxf.addLayer(layer, 7, 'CONTINUOUS');
const on = layerName => ({ layerName });

dxf.addLine(point3d(10, 20), point3d(1210, 320), on('line'));
dxf.addArc(point3d(0, 0), 900, 20, 110, on('arc'));
// A quarter circle is a bulge of tan(90°/4).
dxf.addLWPolyline([{ point: point2d(0, 0) }, { point: point2d(600, 0), bulge: Math.tan(Math.PI / 8) }, { point: point2d(1400, 800) }, { point: point2d(1400, 1300) }], on('bulge'));
dxf.addPolyline3D([0, 100, 200, 300, 400, 500, 600, 700, 800].map(x => ({ point: point3d(x, x * x / 2500) })), on('polyline'));
dxf.addSpline({ controlPoints: [point3d(0, 0), point3d(300, 0), point3d(700, 80), point3d(1000, 300), point3d(1300, 700)], degreeCurve: 3 }, on('spline'));
dxf.addLine(point3d(0, -500), point3d(500, -500), on('chain'));
dxf.addArc(point3d(500, 200), 700, 270, 330, on('chain'));
dxf.addText(point3d(0, 0), 10, 'not a track', on('notes'));
writeFileSync(process.argv[2], dxf.stringify());
