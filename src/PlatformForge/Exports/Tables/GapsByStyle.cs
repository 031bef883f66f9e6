using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Manifests;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;

namespace PlatformForge.Exports.Tables;

/// <summary>
/// The figures behind the gap plot, for other programs to draw: at every station what is needed, and for each style of edge where it would run and what gap it
/// would leave to each vehicle's doors. All in mm; null where no door comes.
/// </summary>
/// <param name="Platform">Name of the platform.</param>
/// <param name="Chosen">Style that is built.</param>
/// <param name="Chainage">The stations.</param>
/// <param name="BareReach">How far vehicles reach from the track's middle without any play.</param>
/// <param name="SweptReach">The same with play.</param>
/// <param name="RequiredReach">The same with the budget, kept in every direction.</param>
/// <param name="Allowances">What each allowance adds to the bare reach; together they come to what is required.</param>
/// <param name="GoverningVehicle">Vehicle that reaches farthest.</param>
/// <param name="GoverningPart">Its part that does.</param>
/// <param name="GoverningTrack">Track it runs on: the faced one, or another that comes near.</param>
/// <param name="SteppingLimit">The published limit that gaps are set beside.</param>
/// <param name="Styles">One for each style of edge.</param>
public sealed record GapsByStyle(
    string Platform, EdgeStyle Chosen, IReadOnlyList<double> Chainage, IReadOnlyList<double?> BareReach, IReadOnlyList<double?> SweptReach,
    IReadOnlyList<double?> RequiredReach,
    IReadOnlyList<AllowanceSeries> Allowances, IReadOnlyList<string?> GoverningVehicle, IReadOnlyList<string?> GoverningPart,
    IReadOnlyList<string?> GoverningTrack, LimitForm SteppingLimit, IReadOnlyList<StyleGaps> Styles)
{
    private const int Digits = 3;

    /// <summary>The series of a plan, on the stations at which its door sills were measured.</summary>
    public static GapsByStyle Of(PlatformPlan plan)
    {
        var need = plan.Requirement;
        var face = plan.Spec.Face;
        double[] stations = [.. (plan.Gaps.Traces is [var trace, ..] ? trace.Stations : need.Stations).Where(s => s >= face.From && s <= face.To)];
        PlanLine swept = new(need.Stations, need.Swept), required = new(need.Stations, [.. need.Stations.Select((_, i) => need.Required(i))]);
        var parts = need.Allowances ?? new(need.Swept, []);
        double[] Along(double[] values) => [.. stations.Select(new PlanLine(need.Stations, values).At)];
        double spacing = need.Stations[1] - need.Stations[0];
        int[] nearest = [.. stations.Select(s => Math.Clamp((int)Math.Round((s - need.Stations[0]) / spacing), 0, need.Stations.Length - 1))];
        return new(
            plan.Spec.Name, face.Edge, [.. stations.Select(s => Math.Round(s, Digits))], [.. Along(parts.Bare).Select(Known)],
            [.. stations.Select(s => Known(swept.At(s)))], [.. stations.Select(s => Known(required.At(s)))],
            [.. parts.Costs.Select(c => new AllowanceSeries(c.Name, [.. Along(c.Amount).Select(Known)]))],
            [.. nearest.Select(i => need.GoverningVehicle[i] < 0 ? null : need.Vehicles[need.GoverningVehicle[i]])],
            [.. nearest.Select(i => need.GoverningVehicle[i] < 0 ? null : need.GoverningPart[i])],
            [.. nearest.Select(i => need.GoverningVehicle[i] < 0 ? null : plan.TrackOf(need.GoverningVehicle[i]))],
            LimitForm.At(plan.Site.Scale),
            [.. Enum.GetValues<EdgeStyle>().Select(style => Style(plan, style, stations))]);
    }

    public byte[] ToJson() => JsonForms.ToBytes(this, GapsJson.Forms.GapsByStyle);

    public byte[] ToCsv()
    {
        string[] headings =
        [
            "chainage_mm", "bare_reach_mm", .. Allowances.Select(a => $"{a.Name} mm"), "swept_reach_mm", "required_reach_mm", "governing_vehicle",
            "governing_part", "governing_track", "stepping_limit_full_size_mm",
            .. Styles.SelectMany(s => s.Vehicles.SelectMany(v => new[]
            {
                $"{Word(s)} {v.Vehicle} nearest_gap_mm", $"{Word(s)} {v.Vehicle} farthest_gap_mm", $"{Word(s)} {v.Vehicle} farthest_gap_full_size_mm",
                $"{Word(s)} {v.Vehicle} farthest_gap_full_size_in",
            }).Prepend($"{Word(s)} coping_reach_mm")),
        ];
        var csv = new CsvText(headings);
        for (int i = 0; i < Chainage.Count; i++)
        {
            csv.Row([
                Cell(Chainage[i]), Cell(BareReach[i]), .. Allowances.Select(a => Cell(a.Amount[i])), Cell(SweptReach[i]), Cell(RequiredReach[i]),
                GoverningVehicle[i] ?? "", GoverningPart[i] ?? "", GoverningTrack[i] ?? "", Figures.Fixed(SteppingLimit.LevelFullSizeMm, 0),
                .. Styles.SelectMany(s =>
                    s.Vehicles.SelectMany(v => new[] { Cell(v.Nearest[i]), Cell(v.Farthest[i]), Full(v.Farthest[i], 1, 0),
                        Full(v.Farthest[i], Figures.MmPerInch, 1) }).Prepend(Cell(s.CopingReach[i]))),
            ]);
        }

        return csv.ToBytes();
    }

    // A gap moves with the edge: what another style would leave is the chosen one's gap and the difference of the edges.
    private static StyleGaps Style(PlatformPlan plan, EdgeStyle style, double[] stations)
    {
        var edge = plan.Alternatives[(int)style];
        double[] moved = [.. stations.Select(s => edge.At(s) - plan.CopingFront.At(s))];
        return new(style, [.. stations.Select(s => Known(edge.At(s)))], [.. plan.Gaps.Traces.Select(t => new VehicleGaps(
            t.Vehicle,
            [.. stations.Select((s, i) => Known(new PlanLine(t.Stations, t.Nearest).At(s) + moved[i]))],
            [.. stations.Select((s, i) => Known(new PlanLine(t.Stations, t.Farthest).At(s) + moved[i]))]))]);
    }

    private static double? Known(double value) => double.IsFinite(value) ? Math.Round(value, Digits) : null;

    private static string Cell(double? value) => value is { } known ? Figures.Fixed(known, Digits) : "";

    private string Full(double? value, double unit, int digits) => value is { } known ? Figures.Fixed(known * SteppingLimit.Ratio / unit, digits) : "";

    private static string Word(StyleGaps style) => style.Style.ToString().ToLowerInvariant();
}

/// <summary>What an allowance costs along a platform, mm.</summary>
/// <param name="Name">Its name in the budget.</param>
/// <param name="Amount">How much it adds at each station.</param>
public sealed record AllowanceSeries(string Name, IReadOnlyList<double?> Amount);

/// <summary>The published stepping limit, level, upright and diagonal at full size, and what its level figure is in the model.</summary>
public sealed record LimitForm(double Ratio, double LevelFullSizeMm, double LevelFullSizeIn, double LevelMm, double UprightFullSizeMm,
    double DiagonalFullSizeMm, string Source)
{
    internal static LimitForm At(Units.ModelScale scale) => new(
        scale.Ratio, PlatformForge.Platforms.Plans.SteppingLimit.Horizontal,
        Math.Round(PlatformForge.Platforms.Plans.SteppingLimit.Horizontal / Figures.MmPerInch, 2),
        Math.Round(scale.ToModel(PlatformForge.Platforms.Plans.SteppingLimit.Horizontal), 3),
        PlatformForge.Platforms.Plans.SteppingLimit.Vertical, PlatformForge.Platforms.Plans.SteppingLimit.Diagonal,
        PlatformForge.Platforms.Plans.SteppingLimit.Source);
}

/// <summary>What one style of edge would come to.</summary>
/// <param name="Style">The style.</param>
/// <param name="CopingReach">Its coping edge from the track's middle, mm.</param>
/// <param name="Vehicles">Gaps to each vehicle with a door sill.</param>
public sealed record StyleGaps(EdgeStyle Style, IReadOnlyList<double?> CopingReach, IReadOnlyList<VehicleGaps> Vehicles);

/// <summary>Gaps from an edge to the doors of a vehicle, level, mm.</summary>
/// <param name="Vehicle">Its name.</param>
/// <param name="Nearest">Smallest gap at each station.</param>
/// <param name="Farthest">Largest gap at each.</param>
public sealed record VehicleGaps(string Vehicle, IReadOnlyList<double?> Nearest, IReadOnlyList<double?> Farthest);
