using PlatformForge.Clearance.Vehicles;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Pictures.Bodies;

/// <summary>A vehicle for pictures, in plain shapes over its own outlines: body with window band and roof, what hangs below, wheels on the rails.</summary>
internal sealed class RollingStock(double ratio, double gauge, double railTop)
{
    private static readonly Rgb Under = new(0x38, 0x36, 0x36), Band = new(0xE9, 0xE0, 0xC6), Roof = new(0x86, 0x86, 0x82), Glass = new(0x3C, 0x4A, 0x52),
        Steel = new(0x5B, 0x56, 0x52);

    // Shares of a body's height: up to its window band, to the sill and the top of its windows, to its roof.
    private const double Waist = 0.46, Sill = 0.5, Lintel = 0.72, Cornice = 0.8;

    // mm at full size, from memory: wheels, and what is as high as this is a body with a roof.
    private const double WheelRadius = 460, WheelWidth = 130, Tall = 1500, Floor = 1080;

    public IEnumerable<SceneBody> Of(VehicleOutlinePose pose, Rgb colour)
    {
        foreach (var placed in pose.Parts)
        {
            double low = railTop + placed.Part.ZLow, high = railTop + placed.Part.ZHigh;
            Point2[] ring = [.. placed.Ring];
            if (placed.Part.Carrier != PartCarrier.Body || (high - low) * ratio < Tall || ring.Length != 4)
            {
                yield return new(Blocks.Prism(ring, low, high), [Under]);
                continue;
            }

            foreach (var body in Coach(ring, low, high, colour, pose.Vehicle.Sill is not null))
            {
                yield return body;
            }
        }

        yield return new(SweptProfile.Joined([.. Wheels(pose)]), [Steel]);
        foreach (var coupled in pose.Coupled.SelectMany(c => Of(c, colour)))
        {
            yield return coupled;
        }
    }

    private IEnumerable<SceneBody> Coach(Point2[] ring, double low, double high, Rgb colour, bool windows)
    {
        // A body that is told down to its lowest part has a floor all the same, with a narrow underframe below it.
        double under = low;
        low = Math.Max(low, railTop + (Floor / ratio));
        if (low - under > 0)
        {
            yield return new(Blocks.Prism(Shortened(Narrowed(ring, 0.55), 0.5), under + ((low - under) * 0.35), low), [Under]);
            yield return new(Blocks.Prism(Shortened(Narrowed(ring, 0.96), 0.99), low - (180 / ratio), low), [Under]);
        }

        double At(double share) => low + (share * (high - low));
        double waist = windows ? At(Waist) : At(Cornice);
        yield return new(Blocks.Prism(ring, low, waist), [colour]);
        if (windows)
        {
            yield return new(Blocks.Prism(ring, waist, At(Cornice)), [Band]);
            yield return new(SweptProfile.Joined([.. Panes(ring, At(Sill), At(Lintel))]), [Glass]);
        }

        // The roof rises in three steps of a flat arc.
        (double Width, double Height)[] arc = [(1, Cornice), (0.86, 0.9), (0.58, 0.97), (0.22, 1)];
        for (int i = 0; i + 1 < arc.Length; i++)
        {
            yield return new(Blocks.Loft(Narrowed(ring, arc[i].Width), At(arc[i].Height), Narrowed(ring, arc[i + 1].Width), At(arc[i + 1].Height)), [Roof],
                Outlined: i == 0);
        }
    }

    // The ring with its long sides drawn in towards the middle.
    private static Point2[] Narrowed(Point2[] ring, double share)
    {
        var middle = (ring[0] + ring[1] + ring[2] + ring[3]) * 0.25;
        var along = Long(ring) == 0 ? ring[1] - ring[0] : ring[2] - ring[1];
        along *= 1 / along.Length;
        return Array.ConvertAll(ring, p => middle + (along * Point2.Dot(p - middle, along)) + (along.Left * (share * Point2.Dot(p - middle, along.Left))));
    }

    // The same with its short sides drawn in.
    private static Point2[] Shortened(Point2[] ring, double share)
    {
        var middle = (ring[0] + ring[1] + ring[2] + ring[3]) * 0.25;
        var along = Long(ring) == 0 ? ring[1] - ring[0] : ring[2] - ring[1];
        along *= 1 / along.Length;
        return Array.ConvertAll(ring, p => middle + (along * (share * Point2.Dot(p - middle, along))) + (along.Left * Point2.Dot(p - middle, along.Left)));
    }

    private static int Long(Point2[] ring) => (ring[1] - ring[0]).Length > (ring[2] - ring[1]).Length ? 0 : 1;

    private IEnumerable<Mesh> Panes(Point2[] ring, double low, double high)
    {
        int first = Long(ring);
        foreach (int i in (int[])[first, first + 2])
        {
            Point2 a = ring[i], b = ring[(i + 1) % 4], along = (b - a) * (1 / (b - a).Length);
            int count = Math.Max(1, (int)((b - a).Length * ratio / 1500));
            for (int k = 0; k < count; k++)
            {
                var at = a + ((b - a) * ((k + 0.5) / count));
                yield return Blocks.Prism(Blocks.Square(at, along, 900 / ratio, 50 / ratio), low, high);
            }
        }
    }

    private IEnumerable<Mesh> Wheels(VehicleOutlinePose pose)
    {
        double radius = WheelRadius / ratio;
        foreach (var (frame, wheelbase, ahead) in new[] { (pose.Pose.LeadingBogie, pose.Vehicle.LeadingWheelbase, pose.Vehicle.LeadingPivotAhead),
            (pose.Pose.TrailingBogie, pose.Vehicle.TrailingWheelbase, pose.Vehicle.TrailingPivotAhead) })
        {
            double[] axles = wheelbase > 0 ? [-ahead - (wheelbase / 2), (wheelbase / 2) - ahead] : [0];
            foreach (double x in axles)
            {
                var axis = frame.Apply(new(x, 1)) - frame.Apply(new(x, 0));
                foreach (int side in (int[])[-1, 1])
                {
                    var at = frame.Apply(new(x, side * ((gauge / 2) + (40 / ratio))));
                    yield return Blocks.Drum(new(at.X, at.Y, railTop + radius), axis, radius, WheelWidth / ratio);
                }
            }

            if (wheelbase > 0)
            {
                foreach (int side in (int[])[-1, 1])
                {
                    Point2 a = frame.Apply(new(axles[0] - radius, side * ((gauge / 2) + (170 / ratio)))),
                        b = frame.Apply(new(axles[1] + radius, side * ((gauge / 2) + (170 / ratio))));
                    double z = railTop + (0.8 * radius);
                    yield return Blocks.Beam(new(a.X, a.Y, z), new(b.X, b.Y, z), 60 / ratio, 0.5 * radius);
                }
            }
        }
    }
}
