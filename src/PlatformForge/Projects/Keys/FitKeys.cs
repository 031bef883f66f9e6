using PlatformForge.Platforms.Features;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Reading;
using PlatformForge.Sections.Forms;
using PlatformForge.Units;
using PlatformForge.Units.Specs;

namespace PlatformForge.Projects.Keys;

/// <summary>What coupons were found to need. It is laid under the openings themselves, so nothing is kept here.</summary>
internal sealed record MeasuredFits;

/// <summary>
/// Keys of <c>[fits]</c>, and what they do: each stands in for the <c>fit</c> of every opening of its kind that states none of its own, so that what a
/// coupon tells is taken back as one line.
/// </summary>
internal static class FitKeys
{
    private const string Fits = "fits", Fit = "fit";

    public static KeyTable<MeasuredFits> Table { get; } = new(OpeningFits.On(
        new SpecKeys<MeasuredFits>(_ => new())
            .Length("dowel", FigureRanges.Fit, "For dowels or plates of joints, as the coupon tells: in place of joint.fit.", _ => new JointSpec().Fit,
                (f, _) => f)));

    /// <summary>The project with measured fits put where they hold.</summary>
    public static TreeTable Lay(TreeTable root, KeyReading reading)
    {
        if (root.Find(Fits)?.Value is not TreeTable fits)
        {
            return root;
        }

        if (fits.Find("dowel") is { Value: TreeNumber or TreeText } dowel && CanBe(dowel))
        {
            var joint = root.Find("joint");
            root = joint switch
            {
                null => root.With(new("joint", dowel.Place, new TreeTable(dowel.Place, [dowel with { Name = Fit }]))),
                { Value: TreeTable table } when table.Find(Fit) is null => root.With(joint with { Value = table.With(dowel with { Name = Fit }) }),
                _ => Overruled(root, dowel, "joint.fit", reading),
            };
        }

        return root.Find("platform") is { Value: TreeList platforms } entry
            ? root.With(entry with
            {
                Value = new TreeList(platforms.Place,
                [.. platforms.Items.Select((p, i) => p is TreeTable platform
                ? OnPlatform(platform, fits, FormattableString.Invariant($"platform[{i}]"), reading) : p)])
            })
            : root;
    }

    // What is no fit is refused where it stands, and not again where it would be laid.
    private static bool CanBe(TreeEntry fit) => fit.Value is not TreeNumber { Value: var mm } || FigureRanges.Fit.Holds(mm);

    private static TreeTable OnPlatform(TreeTable platform, TreeTable fits, string key, KeyReading reading)
    {
        foreach (var (name, tables) in OpeningFits.Shared)
        {
            if (fits.Find(name) is not { Value: TreeNumber or TreeText } fit || !CanBe(fit))
            {
                continue;
            }

            foreach (string table in tables)
            {
                platform = platform.Find(table) switch
                {
                    { Value: TreeTable one } entry => platform.With(entry with { Value = Fitted(one, fit, $"{key}.{table}", reading) }),
                    { Value: TreeList list } entry => platform.With(entry with
                    {
                        Value = new TreeList(list.Place,
                            [.. list.Items.Select((t, i) => t is TreeTable one ? Fitted(one, fit, FormattableString.Invariant($"{key}.{table}[{i}]"), reading)
                            : t)]),
                    }),
                    _ => platform,
                };
            }
        }

        return platform;
    }

    private static TreeTable Fitted(TreeTable opening, TreeEntry fit, string key, KeyReading reading) =>
        opening.Find(Fit) is null ? opening.With(fit with { Name = Fit }) : Overruled(opening, fit, key + ".fit", reading);

    private static TreeTable Overruled(TreeTable kept, TreeEntry fit, string key, KeyReading reading)
    {
        reading.Add([Finding.Note("PF7503", $"{Fits}.{fit.Name}", $"{key} states a fit of its own, so fits.{fit.Name} does not change it.",
            $"Take {key} out of the file, if the coupon is to decide.")]);
        return kept;
    }
}
