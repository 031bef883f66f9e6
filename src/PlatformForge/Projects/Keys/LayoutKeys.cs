using PlatformForge.Clearance.Rules;
using PlatformForge.Platforms.Requests;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Units;

namespace PlatformForge.Projects.Keys;

/// <summary>What holds for the whole layout. Lengths in mm of the model.</summary>
/// <param name="Name">Name of the place.</param>
/// <param name="Scale">Full size over model.</param>
/// <param name="Gauge">Between the running edges.</param>
/// <param name="RailTop">Rails' running surface over the baseboard.</param>
public sealed record LayoutSpec(string Name, ModelScale Scale, double Gauge, double RailTop)
{
    /// <summary>Name of the scale's preset; empty when the ratio was stated.</summary>
    public string ScaleName { get; init; } = "";

    /// <summary>Width of a rail's head; null takes that of full-size rail in the scale.</summary>
    public double? RailHead { get; init; }

    /// <summary>Name of the published rules that platforms are held to, or <see cref="NoRules"/>.</summary>
    public string Rules { get; init; } = NoRules;

    /// <summary>What <see cref="Rules"/> says when platforms are held to no published rules.</summary>
    public const string NoRules = "none";
}

/// <summary>Keys of <c>[layout]</c>.</summary>
internal static class LayoutKeys
{
    private static readonly ModelScale Unset = new(double.NaN);

    public static KeyTable<LayoutSpec> Table { get; } = new KeyTable<LayoutSpec>(_ => new("", Unset, double.NaN, double.NaN))
        .Text("name", "Name of the place; it is printed on drawings and engraved underneath.", l => l.Name, (l, v) => l with { Name = v }, required: true)
        .Text("scale", "Name of a scale; it sets ratio and gauge. See: platformforge presets scales", l => l.ScaleName, (l, v) => l with { ScaleName = v })
        .Number(
            "ratio",
            ModelScale.Ratios,
            "",
            "Full size over model, 76.2 for 4 mm to the foot; in place of scale or to correct it.",
            l => l.Scale.Ratio,
            (l, v) => l with { Scale = new(v) })
        .Length(
            "gauge",
            NumberRange.From(2, 300),
            "Distance between the running edges of the rails; in place of scale or to correct it.",
            l => l.Gauge,
            (l, v) => l with { Gauge = v })
        .Length(
            "rail_top",
            PlatformSite.RailTops,
            "Height of the rails' top over the baseboard: underlay, sleeper and rail together.",
            l => l.RailTop,
            (l, v) => l with { RailTop = v },
            required: true)
        .Length(
            "rail_head",
            NumberRange.From(0.1, 20),
            "Width of a rail's head, for setting out from its outer face; left out, 70 mm of full size.",
            l => l.RailHead,
            (l, v) => l with { RailHead = v })
        .Text(
            "rules",
            "Published rules that platforms are held to; what they miss is a warning. See: platformforge presets rules",
            l => l.Rules,
            (l, v) => l with { Rules = v },
            choices: [LayoutSpec.NoRules, .. NationalRules.All.Select(r => r.Name)])
        .Check((layout, table, key, reading) =>
        {
            if (layout.ScaleName.Length > 0)
            {
                return; // an unknown name has been told already
            }

            if (!double.IsFinite(layout.Scale.Ratio))
            {
                reading.Fault(
                    "PF1009",
                    key + ".scale",
                    table.Place,
                    "The layout has neither scale nor ratio.",
                    "Add scale = \"4mm\" (platformforge presets scales lists the names) or ratio = 76.2.",
                    Cure.Text(key + ".scale", "4mm"));
            }

            if (!double.IsFinite(layout.Gauge))
            {
                reading.Fault(
                    "PF1009",
                    key + ".gauge",
                    table.Place,
                    "The layout has neither scale nor gauge.",
                    "Add gauge, the distance between the rails in mm, such as gauge = 16.5.",
                    Cure.Set(key + ".gauge", 16.5));
            }
        });
}
