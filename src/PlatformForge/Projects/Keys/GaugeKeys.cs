using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Reading;
using PlatformForge.Proofs;
using PlatformForge.Units;

namespace PlatformForge.Projects.Keys;

/// <summary>Keys of <c>[gauges]</c>.</summary>
internal static class GaugeKeys
{
    private static readonly ListRule Boards = new("throw_boards",
        "Vehicles of which throw boards are made; left out, the one that comes nearest to each face.", new TextRule("", "Name of a vehicle.", []), 1, 100);

    public static KeyTable<ProofSpec> Table { get; } = new KeyTable<ProofSpec>(ProofSpec.For)
        .Numbers("at", NumberRange.Chainage, "mm",
            "Distances along the tracks at which slide gauges are made; left out, three a face: where it is tightest and near the ends of its level part.",
            (g, v) => g with { At = v }, 1, 100)
        .Own(Boards, ReadBoards)
        .Length("air", NumberRange.From(0.1, 5), "Air that a slide gauge keeps from coping and wall.", g => g.Air, (g, v) => g with { Air = v })
        .Length("play", NumberRange.From(0, 5), "Play of a gauge's tongues between the rails, on each side.", g => g.Play, (g, v) => g with { Play = v })
        .Length("pencil", NumberRange.From(0.3, 10), "Diameter of the pencil's point that goes through a throw board's holes.", g => g.Pencil, (g, v) =>
            g with { Pencil = v })
        .Length("footprint", NumberRange.From(0.1, 5), "Thickness of footprints.", g => g.Footprint, (g, v) => g with { Footprint = v })
        .Length("masks", NumberRange.From(0.1, 5), "Thickness of masks that are printed.", g => g.Masks, (g, v) => g with { Masks = v })
        .Length("slice", NumberRange.From(2, 100), "Length of test slices along the track.", g => g.Slice, (g, v) => g with { Slice = v })
        .Length("sleepers", NumberRange.From(1, 500), "Width over the ends of your sleepers: the finger for the wall's foot keeps off them.", g => g.Sleepers,
            (g, v) => g with { Sleepers = v });

    private static ProofSpec ReadBoards(ProofSpec spec, TreeNode node, string key, KeyReading reading)
    {
        if (reading.List(Boards, node, key) is not { } nodes)
        {
            return spec;
        }

        var names = nodes.Select((n, i) => reading.Text((TextRule)Boards.Item, n, FormattableString.Invariant($"{key}[{i}]"))).ToArray();
        return names.All(n => n is not null) ? spec with { Vehicles = names! } : spec;
    }
}
