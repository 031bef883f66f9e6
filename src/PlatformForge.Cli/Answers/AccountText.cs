using System.Text.Json;
using PlatformForge.Cli.Commands;
using PlatformForge.Exports.Files;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using static System.FormattableString;

namespace PlatformForge.Cli.Answers;

/// <summary>What decides the edge at one chainage and what each style would leave, in words and as JSON members.</summary>
internal static class AccountText
{
    private const double MmPerInch = 25.4;

    public static void Plain(TextWriter o, PlatformDossier platform, double chainage)
    {
        var account = EdgeAccount.At(platform.Plan, chainage);
        var scale = platform.Plan.Site.Scale;
        o.WriteLine(Invariant($"{platform.Name} at chainage {chainage:0.#} mm: the coping needs {account.Required:0.00} mm from the track's middle, ")
            + Invariant($"for {account.Vehicle} ({account.Part})"));
        o.WriteLine(Invariant($"  bare reach {account.Bare:0.00}") + string.Concat(account.Allowances.Select(a => Invariant($" + {a.Name} {a.Mm:0.00}")))
            + Invariant($" = {account.Required:0.00} mm"));
        string[] vehicles = [.. account.Styles.SelectMany(s => s.Gaps).Select(g => g.Vehicle).Distinct()];
        var rows = new List<string[]> { (string[])["edge", "mm", "beyond need",
            .. vehicles.SelectMany(v => new[] { "gap to " + v, "at full size, farthest door", "limit" })] };
        rows.AddRange(account.Styles.Select(s => (string[])
        [
            s.Style.ToString().ToLowerInvariant() + (s.Chosen ? " (chosen)" : ""), Invariant($"{s.Reach:0.00}"),
            Invariant($"{s.Reach - account.Required:0.00}"),
            .. vehicles.SelectMany(v => s.Gaps.FirstOrDefault(g => g.Vehicle == v) is { } gap
                ? new[] { Invariant($"{gap.Nearest:0.0} to {gap.Farthest:0.0}"), FullSize(scale.ToFullSize(gap.Farthest)),
                    scale.ToFullSize(gap.Farthest) <= SteppingLimit.Horizontal ? "kept" : "over" }
                : ["", "", ""]),
        ]));
        int[] widths = [.. Enumerable.Range(0, rows[0].Length).Select(c => rows.Max(r => r[c].Length))];
        foreach (string[] row in rows)
        {
            o.WriteLine(("  " + string.Join("  ", row.Select((cell, c) => c == 0 ? cell.PadRight(widths[c]) : cell.PadLeft(widths[c])))).TrimEnd());
        }

        o.WriteLine(Invariant($"  stepping limit: {FullSize(SteppingLimit.Horizontal)} level at full size, {scale.ToModel(SteppingLimit.Horizontal):0.00} mm ")
            + Invariant($"here ({SteppingLimit.Source})"));
    }

    public static void Json(Utf8JsonWriter json, IReadOnlyList<PlatformDossier> platforms, IReadOnlyList<double> chainages)
    {
        json.WriteStartArray("accounts");
        foreach (var platform in platforms)
        {
            foreach (double s in On(platform, chainages))
            {
                One(json, platform, EdgeAccount.At(platform.Plan, s));
            }
        }

        json.WriteEndArray();
    }

    /// <summary>Those of the chainages that a platform reaches.</summary>
    public static IEnumerable<double> On(PlatformDossier platform, IReadOnlyList<double> chainages) =>
        chainages.Where(s => s >= platform.Plan.Spec.Face.From && s <= platform.Plan.Spec.Face.To);

    /// <summary>Full-size mm and inches.</summary>
    public static string FullSize(double mm) => Invariant($"{mm:0} mm ({mm / MmPerInch:0.0} in)");

    private static void One(Utf8JsonWriter json, PlatformDossier platform, EdgeAccount account)
    {
        json.WriteStartObject();
        json.WriteString("platform", platform.Name);
        JsonObject.Number(json, "chainage_mm", account.Chainage);
        json.WriteString("vehicle", account.Vehicle);
        json.WriteString("part", account.Part);
        JsonObject.Number(json, "bare_reach_mm", account.Bare);
        json.WriteStartArray("allowances");
        foreach (var allowance in account.Allowances)
        {
            json.WriteStartObject();
            json.WriteString("name", allowance.Name);
            JsonObject.Number(json, "mm", allowance.Mm);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        JsonObject.Number(json, "required_reach_mm", account.Required);
        json.WriteStartArray("styles");
        foreach (var style in account.Styles)
        {
            json.WriteStartObject();
            json.WriteString("style", style.Style.ToString().ToLowerInvariant());
            json.WriteBoolean("chosen", style.Chosen);
            JsonObject.Number(json, "reach_mm", style.Reach);
            Gaps(json, style, platform.Plan.Site.Scale.Ratio);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        JsonObject.Number(json, "stepping_limit_full_size_mm", SteppingLimit.Horizontal);
        json.WriteString("stepping_limit_source", SteppingLimit.Source);
        json.WriteEndObject();
    }

    // What a style would leave beside each vehicle, and at full size by the scale's ratio.
    private static void Gaps(Utf8JsonWriter json, StyleAccount style, double ratio)
    {
        json.WriteStartArray("gaps");
        foreach (var gap in style.Gaps)
        {
            json.WriteStartObject();
            json.WriteString("vehicle", gap.Vehicle);
            JsonObject.Number(json, "nearest_mm", gap.Nearest);
            JsonObject.Number(json, "farthest_mm", gap.Farthest);
            JsonObject.Number(json, "farthest_full_size_mm", gap.Farthest * ratio);
            JsonObject.Number(json, "farthest_full_size_in", gap.Farthest * ratio / MmPerInch);
            json.WriteBoolean("limit_kept", gap.Farthest * ratio <= SteppingLimit.Horizontal);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
