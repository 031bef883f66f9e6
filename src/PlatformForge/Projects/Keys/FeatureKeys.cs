using PlatformForge.Platforms;
using PlatformForge.Platforms.Features;
using PlatformForge.Platforms.Features.Kinds;

namespace PlatformForge.Projects.Keys;

/// <summary>Keys of what stands on a platform and is let into it: one table a kind, and the list of them.</summary>
internal static class FeatureKeys
{
    private static readonly NumberRange Fit = NumberRange.From(0, 5), Depth = NumberRange.Over0(300), Post = NumberRange.Over0(50), Seat = NumberRange.Over0(1000);

    /// <summary>Puts all kinds into the keys of a platform; features stand in this order.</summary>
    public static KeyTable<PlatformSpec> On(KeyTable<PlatformSpec> platform) => platform
        .Several("board", "A socket for a post of a running-in board or the like; wide and shallow, the seat of a building.", Board)
        .One("fence", "Holes for the posts of a fence along the back; left out, there are none.", Fence)
        .Several("hole", "A round hole for a lamp, a canopy's post or a screw.", Hole)
        .Several("lamp", "A hole through the deck for a lamp post, with a channel below the deck that leads its wires on past the next rib.", Lamp);

    private static KeyTable<PlatformSpec> Several<T>(this KeyTable<PlatformSpec> platform, string name, string says, KeyTable<T> table)
        where T : FeatureSpec => platform.Tables(name, says, table, (feature, _) => feature, (p, features) => p.With(features));

    private static KeyTable<PlatformSpec> One<T>(this KeyTable<PlatformSpec> platform, string name, string says, KeyTable<T> table)
        where T : FeatureSpec => platform.Table(name, says, table, p => p.Of<T>() is [var one, ..] ? one : null, (p, feature) => p.With([feature]));

    private static KeyTable<FenceSpec> Fence => new KeyTable<FenceSpec>(FenceSpec.For)
        .Length("inset", NumberRange.From(0, 500), "From the platform's back to the middles of the posts.", f => f.Inset, (f, v) => f with { Inset = v })
        .Length("pitch", NumberRange.From(1, 1000), "Distance between posts: aimed at where panels are even, exact where they are whole.", f => f.Pitch, (f, v) => f with { Pitch = v })
        .Choice("panels", "How it is divided: every run evenly, or by whole panels of the pitch, as they are bought, and an odd one.", f => f.Panels, (f, v) => f with { Panels = v }, [("even", FencePanels.Even), ("whole", FencePanels.Whole)])
        .Choice("odd", "Where the odd one of whole panels stands: at the fence's ends or beside its gates.", f => f.Odd, (f, v) => f with { Odd = v }, [("ends", OddPanel.Ends), ("gates", OddPanel.Gates)])
        .Length("pin", Post, "Diameter of a post's pin.", f => f.PinDiameter, (f, v) => f with { PinDiameter = v })
        .Length("fit", Fit, "Added to the pin's diameter so that it goes in.", f => f.Fit, (f, v) => f with { Fit = v })
        .Length("depth", Depth, "Depth of the holes; left out, they go right through the deck. Deeper than the deck, they stand in bosses.", f => f.Depth, (f, v) => f with { Depth = v })
        .Length("from", NumberRange.Chainage, "Distance along the track of the first post; left out, near the platform's start.", f => f.From, (f, v) => f with { From = v })
        .Length("to", NumberRange.Chainage, "The same of the last post.", f => f.To, (f, v) => f with { To = v })
        .Length("end_inset", NumberRange.From(0, 500), "From the platform's ends to the first and last post.", f => f.EndInset, (f, v) => f with { EndInset = v })
        .Tables("gap", "A gate or steps, as wide at the fence as is stated here.", Gap, (g, _) => g, (f, v) => f with { Gaps = [.. v.Select(g => g.Spec)] });

    private static KeyTable<HoleSpec> Hole => new KeyTable<HoleSpec>(_ => new(double.NaN, double.NaN))
        .Text("name", "What stands in it.", h => h.Name, (h, v) => h with { Name = v })
        .Length("at", NumberRange.Chainage, "Distance along the track of the hole's middle.", h => h.Chainage, (h, v) => h with { Chainage = v }, required: true)
        .Length("inset", NumberRange.From(0, 2000), "From the back (or the edge) to the hole's middle.", h => h.Inset, (h, v) => h with { Inset = v }, required: true)
        .Choice("inset_from", "What the inset is measured from.", h => h.From, (h, v) => h with { From = v }, [("back", InsetFrom.Back), ("edge", InsetFrom.Edge)])
        .Text("face", "On an island, the track of the face whose chainage and edge place it; left out, the first one's.",
            h => h.Face, (h, v) => h with { Face = v })
        .Length("diameter", Post, "Diameter of what goes in.", h => h.Diameter, (h, v) => h with { Diameter = v })
        .Length("fit", Fit, "Added to the diameter so that it goes in.", h => h.Fit, (h, v) => h with { Fit = v })
        .Length("depth", Depth, "Depth of the hole; left out, it goes right through the deck, so that wires can be led below.", h => h.Depth, (h, v) => h with { Depth = v });

    private static KeyTable<SocketSpec> Board => new KeyTable<SocketSpec>(_ => new(double.NaN, double.NaN))
        .Text("name", "What stands in it.", b => b.Name, (b, v) => b with { Name = v })
        .Length("at", NumberRange.Chainage, "Distance along the track of the socket's middle.", b => b.Chainage, (b, v) => b with { Chainage = v }, required: true)
        .Length("inset", NumberRange.From(0, 2000), "From the back (or the edge) to the socket's middle.", b => b.Inset, (b, v) => b with { Inset = v }, required: true)
        .Choice("inset_from", "What the inset is measured from.", b => b.From, (b, v) => b with { From = v }, [("back", InsetFrom.Back), ("edge", InsetFrom.Edge)])
        .Text("face", "On an island, the track of the face whose chainage and edge place it; left out, the first one's.",
            b => b.Face, (b, v) => b with { Face = v })
        .Length("along", Seat, "Size of the post (or the building) along the platform.", b => b.Along, (b, v) => b with { Along = v })
        .Length("across", Seat, "Size of the post (or the building) across the platform.", b => b.Across, (b, v) => b with { Across = v })
        .Length("depth", Depth, "Depth of the socket.", b => b.Depth, (b, v) => b with { Depth = v })
        .Length("fit", Fit, "Added to both sizes so that the post goes in.", b => b.Fit, (b, v) => b with { Fit = v });

    private static KeyTable<LampSpec> Lamp => new KeyTable<LampSpec>(LampSpec.For)
        .Text("name", "What stands in it.", l => l.Name, (l, v) => l with { Name = v })
        .Text("face", "On an island, the track of the face whose chainage and edge place it; left out, the first one's.",
            l => l.Face, (l, v) => l with { Face = v })
        .Length("at", NumberRange.Chainage, "Distance along the track of the post's middle.", l => l.Chainage, (l, v) => l with { Chainage = v }, required: true).Example("540")
        .Length("inset", NumberRange.From(0, 2000), "From the back (or the edge) to the post's middle.", l => l.Inset, (l, v) => l with { Inset = v }, required: true).Example("14")
        .Choice("inset_from", "What the inset is measured from.", l => l.From, (l, v) => l with { From = v }, [("back", InsetFrom.Back), ("edge", InsetFrom.Edge)])
        .Length("diameter", Post, "Diameter of the post's foot.", l => l.Diameter, (l, v) => l with { Diameter = v })
        .Length("fit", Fit, "Added to the diameter so that it goes in.", l => l.Fit, (l, v) => l with { Fit = v })
        .Length("channel", NumberRange.From(0, 20), "Width and height of the channel for its wires through the next rib; 0 makes none.", l => l.Channel, (l, v) => l with { Channel = v })
        .Choice("towards", "End of the platform towards which the wires are led.", l => l.Towards, (l, v) => l with { Towards = v }, [("start", PlatformEnd.Start), ("end", PlatformEnd.End)]);

    // A gap is stated by its middle and width, or by the chainages of its posts on a straight track.
    private sealed record GapDraft(double? At, double? Width, double? From, double? To)
    {
        public bool IsWhole => At is not null && Width is not null && From is null && To is null || At is null && Width is null && From is not null && To is not null;

        public FenceGapSpec Spec => At is { } at && Width is { } width ? new(at - (width / 2), at + (width / 2)) : new(From ?? double.NaN, To ?? double.NaN);
    }

    private static KeyTable<GapDraft> Gap => new KeyTable<GapDraft>(_ => new(null, null, null, null))
        .Length("at", NumberRange.Chainage, "Distance along the track of the gap's middle.", g => g.At, (g, v) => g with { At = v })
        .Length("width", NumberRange.Over0(10000), "Width from post to post, at the fence itself.", g => g.Width, (g, v) => g with { Width = v })
        .Length("from", NumberRange.Chainage, "In place of at and width: where the gap begins; a post stands here.", g => g.From, (g, v) => g with { From = v })
        .Length("to", NumberRange.Chainage, "Where it ends. On a curve the posts stand about the middle of both, as far apart at the fence as these are.", g => g.To, (g, v) => g with { To = v })
        .Check((g, table, key, reading) =>
        {
            if (!g.IsWhole)
            {
                reading.Fault("PF1013", key, table.Place, $"{KeyReading.LastOf(key)} has neither at and width nor from and to, or some of both.", "Give one pair of them, such as { at = 708, width = 16 } or { from = 700, to = 716 }.");
            }
        });
}
