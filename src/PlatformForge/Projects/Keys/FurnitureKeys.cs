using PlatformForge.Platforms;

namespace PlatformForge.Projects.Keys;

/// <summary>Keys of what stands on a platform.</summary>
internal static class FurnitureKeys
{
    private static readonly NumberRange Fit = NumberRange.From(0, 5), Depth = NumberRange.Over0(300), Post = NumberRange.Over0(50), Seat = NumberRange.Over0(1000);

    public static KeyTable<WhiteLineSpec> Line { get; } = new KeyTable<WhiteLineSpec>(WhiteLineSpec.For)
        .Length("inset", NumberRange.From(0, 200), "From the coping's front edge to the line.", l => l.Inset, (l, v) => l with { Inset = v })
        .Length("width", NumberRange.Over0(50), "Width of the line.", l => l.Width, (l, v) => l with { Width = v })
        .Length("groove_depth", NumberRange.From(0, 10), "Depth of a groove to paint in; 0 makes none.", l => l.GrooveDepth, (l, v) => l with { GrooveDepth = v });

    public static KeyTable<FenceSpec> Fence { get; } = new KeyTable<FenceSpec>(FenceSpec.For)
        .Length("inset", NumberRange.From(0, 500), "From the platform's back to the middles of the posts.", f => f.Inset, (f, v) => f with { Inset = v })
        .Length("pitch", NumberRange.From(1, 1000), "Distance between posts aimed at; panels are made equal.", f => f.Pitch, (f, v) => f with { Pitch = v })
        .Length("pin", Post, "Diameter of a post's pin.", f => f.PinDiameter, (f, v) => f with { PinDiameter = v })
        .Length("fit", Fit, "Added to the pin's diameter so that it goes in.", f => f.Fit, (f, v) => f with { Fit = v })
        .Length("depth", Depth, "Depth of the holes; left out, they go right through the deck.", f => f.Depth, (f, v) => f with { Depth = v })
        .Length("from", NumberRange.Chainage, "Distance along the track of the first post; left out, near the platform's start.", f => f.From, (f, v) => f with { From = v })
        .Length("to", NumberRange.Chainage, "The same of the last post.", f => f.To, (f, v) => f with { To = v })
        .Length("end_inset", NumberRange.From(0, 500), "From the platform's ends to the first and last post.", f => f.EndInset, (f, v) => f with { EndInset = v })
        .Tables("gap", "A gate or steps: no fence between these distances along the track.", Gap, (g, _) => g, (f, v) => f with { Gaps = v });

    public static KeyTable<HoleSpec> Hole { get; } = new KeyTable<HoleSpec>(_ => new(double.NaN, double.NaN))
        .Text("name", "What stands in it.", h => h.Name, (h, v) => h with { Name = v })
        .Length("at", NumberRange.Chainage, "Distance along the track of the hole's middle.", h => h.Chainage, (h, v) => h with { Chainage = v }, required: true)
        .Length("inset", NumberRange.From(0, 2000), "From the back (or the edge) to the hole's middle.", h => h.Inset, (h, v) => h with { Inset = v }, required: true)
        .Choice("inset_from", "What the inset is measured from.", h => h.From, (h, v) => h with { From = v }, [("back", InsetFrom.Back), ("edge", InsetFrom.Edge)])
        .Length("diameter", Post, "Diameter of what goes in.", h => h.Diameter, (h, v) => h with { Diameter = v })
        .Length("fit", Fit, "Added to the diameter so that it goes in.", h => h.Fit, (h, v) => h with { Fit = v })
        .Length("depth", Depth, "Depth of the hole; left out, it goes right through the deck, so that wires can be led below.", h => h.Depth, (h, v) => h with { Depth = v });

    public static KeyTable<SocketSpec> Board { get; } = new KeyTable<SocketSpec>(_ => new(double.NaN, double.NaN))
        .Text("name", "What stands in it.", b => b.Name, (b, v) => b with { Name = v })
        .Length("at", NumberRange.Chainage, "Distance along the track of the socket's middle.", b => b.Chainage, (b, v) => b with { Chainage = v }, required: true)
        .Length("inset", NumberRange.From(0, 2000), "From the back (or the edge) to the socket's middle.", b => b.Inset, (b, v) => b with { Inset = v }, required: true)
        .Choice("inset_from", "What the inset is measured from.", b => b.From, (b, v) => b with { From = v }, [("back", InsetFrom.Back), ("edge", InsetFrom.Edge)])
        .Length("along", Seat, "Size of the post (or the building) along the platform.", b => b.Along, (b, v) => b with { Along = v })
        .Length("across", Seat, "Size of the post (or the building) across the platform.", b => b.Across, (b, v) => b with { Across = v })
        .Length("depth", Depth, "Depth of the socket.", b => b.Depth, (b, v) => b with { Depth = v })
        .Length("fit", Fit, "Added to both sizes so that the post goes in.", b => b.Fit, (b, v) => b with { Fit = v });

    private static KeyTable<FenceGapSpec> Gap => new KeyTable<FenceGapSpec>(_ => new(double.NaN, double.NaN))
        .Length("from", NumberRange.Chainage, "Where the gap begins; a post stands here.", g => g.From, (g, v) => g with { From = v }, required: true)
        .Length("to", NumberRange.Chainage, "Where it ends; a post stands here too.", g => g.To, (g, v) => g with { To = v }, required: true);
}
