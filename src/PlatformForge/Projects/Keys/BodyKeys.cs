using PlatformForge.Platforms;

namespace PlatformForge.Projects.Keys;

/// <summary>Keys of what a platform is built of.</summary>
internal static class BodyKeys
{
    private static readonly NumberRange Wall = NumberRange.From(0.2, 50);

    public static KeyTable<DeckSpec> Deck { get; } = new KeyTable<DeckSpec>(DeckSpec.For)
        .Length("thickness", NumberRange.From(0.2, 50), "Thickness of the deck.", d => d.Thickness, (d, v) => d with { Thickness = v })
        .Length("width", NumberRange.From(1, 2000), "From the coping's front edge to the platform's back.", d => d.Width, (d, v) => d with { Width = v })
        .Number("crossfall", NumberRange.From(0, 1000), "", "Fall away from the edge, 1 in this; 0 is level.", d => d.Crossfall, (d, v) => d with { Crossfall = v })
        .Length("mouth_chamfer", NumberRange.From(0, 5), "Chamfer at the mouths of holes and sockets, against the squashed first layer.", d => d.MouthChamfer, (d, v) => d with { MouthChamfer = v });

    public static KeyTable<CopingSpec> Coping { get; } = new KeyTable<CopingSpec>(CopingSpec.For)
        .Length("width", NumberRange.From(0.5, 200), "From front edge to back.", c => c.Width, (c, v) => c with { Width = v })
        .Length("thickness", NumberRange.From(0.2, 50), "Thickness of the slabs.", c => c.Thickness, (c, v) => c with { Thickness = v })
        .Length("overhang", NumberRange.From(0, 50), "How far the coping projects over the wall.", c => c.Overhang, (c, v) => c with { Overhang = v })
        .Length("slab_length", NumberRange.From(0, 1000), "Length of a slab; joints are spaced evenly near it; 0 makes none.", c => c.SlabLength, (c, v) => c with { SlabLength = v })
        .Length("joint_width", NumberRange.From(0, 5), "Width of the groove between two slabs.", c => c.JointWidth, (c, v) => c with { JointWidth = v })
        .Length("joint_depth", NumberRange.From(0, 20), "Depth of that groove; 0 leaves it to paint.", c => c.JointDepth, (c, v) => c with { JointDepth = v })
        .Length("arris_chamfer", NumberRange.From(0, 10), "Chamfer on the front upper edge.", c => c.ArrisChamfer, (c, v) => c with { ArrisChamfer = v });

    public static KeyTable<WallSpec> Walls { get; } = new KeyTable<WallSpec>(_ => new())
        .Length("front_thickness", Wall, "Thickness of the wall under the coping.", w => w.FrontThickness, (w, v) => w with { FrontThickness = v })
        .Length("back_thickness", Wall, "Thickness of the back wall.", w => w.BackThickness, (w, v) => w with { BackThickness = v })
        .Length("end_thickness", Wall, "Thickness of the walls that close both ends.", w => w.EndThickness, (w, v) => w with { EndThickness = v });

    public static KeyTable<RibSpec> Ribs { get; } = new KeyTable<RibSpec>(_ => new())
        .Length("pitch", NumberRange.From(0, 1000), "Greatest distance between ribs across the platform; 0 makes none.", r => r.Pitch, (r, v) => r with { Pitch = v })
        .Length("thickness", Wall, "Thickness of a rib across.", r => r.Thickness, (r, v) => r with { Thickness = v })
        .Number("lengthwise", NumberRange.From(0, 20), "", "How many ribs run along the platform.", r => r.LongitudinalCount, (r, v) => r with { LongitudinalCount = (int)v }, whole: true)
        .Length("lengthwise_thickness", Wall, "Thickness of a rib along the platform.", r => r.LongitudinalThickness, (r, v) => r with { LongitudinalThickness = v })
        .Length("depth", NumberRange.Over0(300), "Depth below the deck; left out, ribs reach down to the baseboard.", r => r.Depth, (r, v) => r with { Depth = v });

    public static KeyTable<WhiteLineSpec> Line { get; } = new KeyTable<WhiteLineSpec>(WhiteLineSpec.For)
        .Length("inset", NumberRange.From(0, 200), "From the coping's front edge to the line.", l => l.Inset, (l, v) => l with { Inset = v })
        .Length("width", NumberRange.Over0(50), "Width of the line.", l => l.Width, (l, v) => l with { Width = v })
        .Length("groove_depth", NumberRange.From(0, 10), "Depth of a groove to paint in; 0 makes none.", l => l.GrooveDepth, (l, v) => l with { GrooveDepth = v });
}
