using PlatformForge.Units;

namespace PlatformForge.Platforms.Rules;

/// <summary>Every figure of a spec is a finite number in a range that makes sense for a model. The keys of a project file have the same ranges, which a test holds.</summary>
internal static class ValueRules
{
    // Chainages end where a track may, mm.
    internal const double Far = 1e6;

    public static void Check(PlatformSpec spec, PlatformSite site, List<Finding> findings)
    {
        void Range(string key, string what, double value, double least, double most)
        {
            if (!(value >= least && value <= most))
            {
                findings.Add(PlatformFindings.OutOfRange(key.StartsWith("layout", StringComparison.Ordinal) ? key : $"{spec.Key}.{key}", what, value, least, most));
            }
        }

        Range("layout.rail_top", "height of the rails over the baseboard", site.RailTop, 0, 200);
        Range("layout.scale", "scale ratio", site.Scale.Ratio, 4, 1000);
        Face(spec.Face, Range);
        Range("height", "height above rail top", spec.Height, 0.5, 300);
        Ramp(spec.StartRamp, "ramps.start", Range);
        Ramp(spec.EndRamp, "ramps.end", Range);
        Body(spec, Range);
        Fittings(spec, Range);
    }

    private static void Face(FaceSpec face, Action<string, string, double, double, double> range)
    {
        range("face.from", "first chainage", face.From, -Far, Far);
        range("face.to", "last chainage", face.To, -Far, Far);
        range("face.least_radius", "least radius", face.LeastRadius ?? 1, 1, Far);
        range("face.reach", "reach of the edge", face.Reach ?? 1, 0.1, 2000);
        range("face.taper", "taper, as n of 1 in n,", face.Taper, 2, 1000);
        range("face.vertical_gap", "vertical gap", face.VerticalGap, 0, 50);
    }

    private static void Ramp(RampSpec? ramp, string key, Action<string, string, double, double, double> range)
    {
        if (ramp is not null)
        {
            range($"{key}.length", "ramp length", ramp.Length ?? 1, 0.1, 1e4);
            range($"{key}.gradient", "gradient, as n of 1 in n,", ramp.Gradient ?? 1, 1, 100);
            range($"{key}.foot_height", "height of the ramp's foot", ramp.FootHeight ?? 0, -100, 200);
        }
    }

    private static void Body(PlatformSpec spec, Action<string, string, double, double, double> range)
    {
        range("deck.thickness", "deck thickness", spec.Deck.Thickness, 0.2, 50);
        range("deck.width", "deck width", spec.Deck.Width, 1, 2000);
        range("deck.crossfall", "crossfall, as n of 1 in n or 0,", spec.Deck.Crossfall == 0 ? 10 : spec.Deck.Crossfall, 10, 1000);
        range("deck.mouth_chamfer", "chamfer", spec.Deck.MouthChamfer, 0, 5);
        range("coping.width", "coping width", spec.Coping.Width, 0.5, 200);
        range("coping.thickness", "coping thickness", spec.Coping.Thickness, 0.2, 50);
        range("coping.overhang", "coping overhang", spec.Coping.Overhang, 0, 50);
        range("coping.slab_length", "slab length, or 0,", spec.Coping.SlabLength == 0 ? 2 : spec.Coping.SlabLength, 2, 1000);
        range("coping.joint_width", "joint width", spec.Coping.JointWidth, 0, 5);
        range("coping.joint_depth", "joint depth", spec.Coping.JointDepth, 0, 20);
        range("coping.arris_chamfer", "chamfer", spec.Coping.ArrisChamfer, 0, 10);
        range("walls.front_thickness", "wall thickness", spec.Walls.FrontThickness, 0.2, 50);
        range("walls.back_thickness", "wall thickness", spec.Walls.BackThickness, 0.2, 50);
        range("walls.end_thickness", "wall thickness", spec.Walls.EndThickness, 0.2, 50);
        range("ribs.pitch", "rib pitch, or 0,", spec.Ribs.Pitch == 0 ? 5 : spec.Ribs.Pitch, 5, 1000);
        range("ribs.thickness", "rib thickness", spec.Ribs.Thickness, 0.2, 50);
        range("ribs.longitudinal_count", "number of ribs along the platform", spec.Ribs.LongitudinalCount, 0, 20);
        range("ribs.longitudinal_thickness", "rib thickness", spec.Ribs.LongitudinalThickness, 0.2, 50);
        range("ribs.depth", "rib depth", spec.Ribs.Depth ?? 1, 0.2, 300);
    }

    private static void Fittings(PlatformSpec spec, Action<string, string, double, double, double> range)
    {
        foreach (var (feature, key) in Features.FeaturePlanner.Keyed(spec))
        {
            string under = key[(spec.Key.Length + 1)..];
            feature.Figures((figure, what, value, least, most) => range($"{under}.{figure}", what, value, least, most));
        }

        for (int i = 0; i < spec.ForcedCuts.Count; i++)
        {
            range(PlatformFindings.Indexed("", "forced_cuts", i)[1..], "chainage", spec.ForcedCuts[i], -Far, Far);
        }

        for (int i = 0; i < spec.BaseboardJoints.Count; i++)
        {
            range(PlatformFindings.Indexed("", "baseboard_joints", i)[1..], "chainage", spec.BaseboardJoints[i], -Far, Far);
        }

        if (spec.WhiteLine is { } line)
        {
            range("white_line.inset", "inset", line.Inset, 0, 200);
            range("white_line.width", "width", line.Width, 0.1, 50);
            range("white_line.groove_depth", "groove depth", line.GrooveDepth, 0, 10);
        }
    }
}
