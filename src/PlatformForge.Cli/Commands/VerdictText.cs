using System.Text.Json;
using PlatformForge.Cli.Terminals;
using PlatformForge.Platforms.AsBuilt;
using PlatformForge.Projects.Runs;
using PlatformForge.Verification;
using static System.FormattableString;

namespace PlatformForge.Cli.Commands;

/// <summary>Verdicts and figures in words and as JSON members.</summary>
internal static class VerdictText
{
    // Half the last digit shown, mm: what rounds to nothing short is not told as short.
    private const double Seen = 0.005;

    // mm: a shorter stretch is a place.
    private const double Stretched = 10;

    /// <summary>The line everybody reads: least clearance, where, which vehicle.</summary>
    /// <param name="verdict">The verdict on the design.</param>
    /// <param name="built">Where edges stand by gaps measured on the layout; none when nothing was measured.</param>
    public static string Line(Verdict verdict, IEnumerable<AsBuiltEdge>? built = null)
    {
        bool many = verdict.Platforms > 1;
        string? fouled = Fouled(built ?? [], many);
        return (verdict.Passed, verdict.Closest) switch
        {
            // 'Clear' is a word for everything that is printed.
            (true, { } near) when !verdict.IsClear => Invariant($"What was looked at touches nothing. Least clearance {near.Clearance:0.00} mm, {Where(near, many)}."),
            (true, null) when !verdict.IsClear => "What was looked at touches nothing.",
            (true, { } near) => Invariant($"{(fouled is null ? "Clear: nothing touches." : "Clear as planned.")} Least clearance {near.Clearance:0.00} mm, {Where(near, many)}."),
            (true, null) => fouled is null ? "Clear: no vehicle comes to the height of anything printed." : "Clear as planned: no vehicle comes to the height of anything printed.",
            (false, { Clearance: < 0, InPlan: true } near) => Invariant($"Not passed. Overlaps by {-near.Clearance:0.00} mm, {Where(near, many)}."),
            (false, { Clearance: < 0 } near) => Invariant($"FOULS by {-near.Clearance:0.00} mm, {Where(near, many)}."),
            (false, { } near) => Invariant($"Not passed. Least clearance {near.Clearance:0.00} mm, {Where(near, many)}."),
            _ => "Not passed.",
        } + Open(verdict) + fouled;
    }

    // What was held against no vehicle, as a further sentence.
    private static string Open(Verdict verdict)
    {
        const int NamedAtMost = 4;
        return verdict.NotHeld.Count == 0 ? "" : " NOT HELD against any vehicle: " + string.Join("; ", verdict.NotHeld.Take(NamedAtMost)) + (verdict.NotHeld.Count > NamedAtMost ? Invariant($"; and {verdict.NotHeld.Count - NamedAtMost} more") : "") + ".";
    }

    // What was measured on the layout and is fouled there, as a further sentence; null when nothing is.
    private static string? Fouled(IEnumerable<AsBuiltEdge> built, bool many)
    {
        var worst = built.Where(e => e.Worst?.Closest?.Left < 0).MinBy(e => e.Worst!.Closest!.Left);
        return worst?.Worst is { Closest: { } near } measure
            ? Invariant($" AS BUILT IT FOULS by {-near.Left:0.00} mm, at chainage {measure.Reading.Chainage:0.#} mm{(many ? " of platform " + worst.Platform : "")}: {near.Vehicle} ({near.Part}).")
            : null;
    }

    public static void Vehicles(TextWriter o, Verdict verdict)
    {
        foreach (var vehicle in verdict.Vehicles)
        {
            // The names may come from a folder that somebody else made.
            o.WriteLine(PlainLine.Of($"  {vehicle.Vehicle} on {vehicle.Track}: " + (vehicle.Closest is { } near
                ? OfVehicle(near, vehicle.Tightest ?? near, verdict.Platforms > 1)
                : "comes to the height of nothing printed" + (verdict.Platforms > 1 && vehicle.Platform.Length > 0 ? " of " + vehicle.Platform : ""))));
        }
    }

    // What is left is the figure of the report's table too; the clearance of the vehicle standing true comes beside it.
    private static string OfVehicle(Nearness near, Nearness tight, bool many)
    {
        if (near.Clearance < 0)
        {
            return Invariant($"{(near.InPlan ? "overlaps" : "fouls")} by {-near.Clearance:0.00} mm, {Place(near, many)}");
        }

        string left = tight.Clearance < -Seen ? Invariant($"{-tight.Clearance:0.00} mm short of play and budget") : Invariant($"{Math.Max(0, tight.Clearance):0.00} mm left after play and budget");
        return Invariant($"{left}, {Place(tight, many)}; standing true it clears by {near.Clearance:0.00} mm");
    }

    private static string Place(Nearness near, bool many) => Invariant($"{Along(near)}{Beside(near, many)} ({near.Part}{(near.InPlan ? ", in plan" : "")})");

    private static string Along(Nearness near) => near.Stretch.To - near.Stretch.From > Stretched
        ? Invariant($"along chainage {near.Stretch.From:0} to {near.Stretch.To:0} mm")
        : Invariant($"at chainage {near.Chainage:0} mm");

    public static void Json(Utf8JsonWriter json, Verdict verdict)
    {
        json.WriteStartObject("verdict");
        json.WriteBoolean("passed", verdict.Passed);
        json.WriteBoolean("clear", verdict.IsClear);
        json.WriteStartArray("not_held");
        foreach (string open in verdict.NotHeld)
        {
            json.WriteStringValue(open);
        }

        json.WriteEndArray();
        Nearness(json, "closest", verdict.Closest);
        Nearness(json, "tightest", verdict.Tightest);
        json.WriteStartArray("vehicles");
        foreach (var vehicle in verdict.Vehicles)
        {
            json.WriteStartObject();
            json.WriteString("vehicle", vehicle.Vehicle);
            json.WriteString("track", vehicle.Track);
            Nearness(json, "closest", vehicle.Closest);
            Nearness(json, "tightest", vehicle.Tightest);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    public static void Figures(Utf8JsonWriter json, DesignFigures figures)
    {
        JsonObject.Number(json, "mean_gap_mm", figures.MeanGap);
        JsonObject.Number(json, "largest_gap_mm", figures.LargestGap);
        JsonObject.Number(json, "largest_gap_full_size_mm", figures.LargestGapFullSize);
        json.WriteNumber("sections", figures.Sections);
        json.WriteNumber("plates", figures.Plates);
        JsonObject.Number(json, "grams", figures.Grams);
        JsonObject.Number(json, "hours", figures.Hours);
        JsonObject.Number(json, "least_clearance_mm", figures.Closest?.Clearance);
    }

    private static string Where(Nearness near, bool many) =>
        Invariant($"{Along(near)} of {near.Track}{Beside(near, many)}, {Height(near)}: {near.Vehicle} ({near.Part}{(near.Backwards ? ", running backwards" : "")})");

    private static string Beside(Nearness near, bool many) => many ? " at platform " + near.Platform : "";

    // A height that the part has; where nothing of the platform stands at any of its heights there is none to name.
    private static string Height(Nearness near) => !near.InPlan ? Invariant($"{near.Height:0.0} mm above rail top")
        : near.Height < near.Underside ? Invariant($"in plan, under a part whose underside is {near.Underside:0.0} mm above rail top")
        : "in plan, over the part";

    private static void Nearness(Utf8JsonWriter json, string name, Nearness? near)
    {
        if (near is null)
        {
            json.WriteNull(name);
            return;
        }

        json.WriteStartObject(name);
        JsonObject.Number(json, "clearance_mm", near.Clearance);
        json.WriteString("vehicle", near.Vehicle);
        json.WriteString("part", near.Part);
        json.WriteString("track", near.Track);
        json.WriteString("section", near.Section);
        JsonObject.Number(json, "chainage_mm", near.Chainage);
        JsonObject.Number(json, "stretch_from_mm", near.Stretch.From);
        JsonObject.Number(json, "stretch_to_mm", near.Stretch.To);
        JsonObject.Number(json, "offset_mm", near.Offset);
        json.WriteString("platform", near.Platform);
        JsonObject.Number(json, "height_mm", near.Height);
        json.WriteBoolean("in_plan_only", near.InPlan);
        json.WriteBoolean("backwards", near.Backwards);
        json.WriteEndObject();
    }
}
