using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Rules.Findings;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Rules;

/// <summary>What of a trestle can be told before anything is planned.</summary>
internal static class TrestleRule
{
    // Spans of bearers under a deck over their depth together: twenty, as a deck of 1.5 mm has over ribs 30 mm apart (common practice, no source).
    private const double Span = 20;

    // By how much a brace is thinner than its post, mm: sides that fall together by less leave slivers.
    private const double Thinner = 0.2;

    // Clear room between two rows of posts, mm, that anything can be seen through.
    private const double LeastRoom = 1;

    private const double Grain = Tolerances.Rounding;

    public static void Check(PlatformSpec spec, PlatformSite site, List<Finding> findings)
    {
        if (spec.Trestle is not { } trestle)
        {
            return;
        }

        double room = site.RailTop + spec.Height - spec.Deck.Thickness - TrestleStretch.Fall(spec);
        if (room < trestle.LeastHeight - Grain)
        {
            findings.Add(TrestleFindings.TooLow(spec.Key, room, trestle));
            return;
        }

        if (!spec.IsIsland && spec.Back.Retaining is not null)
        {
            findings.Add(TrestleFindings.HoldsNothing(spec.Key));
        }

        Sizes(spec, trestle, findings);
        Rows(spec, trestle, findings);
        Walls(spec, site, findings);
    }

    private static void Sizes(PlatformSpec spec, TrestleSpec trestle, List<Finding> findings)
    {
        double span = Span * (spec.Deck.Thickness + trestle.Bearer);
        if (trestle.Pitch > span + Grain)
        {
            findings.Add(TrestleFindings.WideSpan(spec.Key, trestle.Pitch, span, Span));
        }

        if (trestle.Pitch < (2 * trestle.Post) - Grain)
        {
            findings.Add(TrestleFindings.CloseBents(spec.Key, trestle));
        }

        if (trestle.HasBraces && trestle.Brace > trestle.Post - Thinner + Grain)
        {
            findings.Add(TrestleFindings.ThickBrace(spec.Key, trestle, trestle.Post - Thinner));
        }

        if (trestle.Bearer > trestle.LeastHeight + Grain)
        {
            findings.Add(TrestleFindings.DeepBearer(spec.Key, trestle));
        }

        if (trestle.Longitudinal != LongitudinalForm.None && Hidden(trestle) is { } side)
        {
            findings.Add(TrestleFindings.HiddenBraces(spec.Key, side, trestle.Boarded != BoardedSides.Both));
        }
    }

    // The side whose boards stand before braces along the platform; null where all of those are seen.
    private static string? Hidden(TrestleSpec trestle) => (trestle.Braced, trestle.Boarded) switch
    {
        (_, BoardedSides.None) or (BracedRows.Front, BoardedSides.Back) or (BracedRows.Back, BoardedSides.Front) => null,
        (BracedRows.Back, _) or (BracedRows.Both or BracedRows.All, BoardedSides.Back) => "back",
        _ => "front",
    };

    // Of islands the width is not known yet; posts that are not stated stand 6 ft apart there.
    private static void Rows(PlatformSpec spec, TrestleSpec trestle, List<Finding> findings)
    {
        double most = ((spec.Deck.Width - spec.Coping.Overhang - trestle.Post) / (trestle.Post + LeastRoom)) + 1 + Grain;
        if (!spec.IsIsland && (trestle.Posts ?? 2) > most)
        {
            findings.Add(TrestleFindings.ManyPosts(spec.Key, trestle, spec.Deck.Width, (int)most));
        }
    }

    private static void Walls(PlatformSpec spec, PlatformSite site, List<Finding> findings)
    {
        if (!spec.IsIsland && !spec.Back.ShowsWall)
        {
            findings.Add(TrestleFindings.NeedsWall(spec.Key + ".back", "Banks and open backs"));
            return;
        }

        if (spec.Facing is not { } facing || RampRules.Profile(spec, site, []) is not { } profile)
        {
            return;
        }

        // Asked first: on bents all along, too, an opening would push them aside.
        if (Walled(facing) is var (key, what))
        {
            findings.Add(TrestleFindings.NeedsWall($"{spec.Key}.facing.{key}", what));
        }
        else if (TrestleStretch.Of(spec, profile) is { } stretch && stretch.From <= profile.From && stretch.To >= profile.To)
        {
            findings.Add(TrestleFindings.NothingFaced(spec.Key, profile.HasRamps));
        }
    }

    // What of a facing goes with walls only: its key and its name; null where it has nothing of the kind.
    private static (string Key, string What)? Walled(FacingSpec facing) => facing switch
    {
        { Piers: not null } => ("piers", "Piers"),
        { Downpipes: not null } => ("downpipes", "Downpipes"),
        { Openings.Count: > 0 } => ("opening[0]", "Openings"),
        _ => null,
    };

    /// <summary>Tells where a ramp on bents stands on a solid foot.</summary>
    public static void Feet(PlatformPlan plan, List<Finding> findings)
    {
        if (plan is { Trestle.Stretch: var bents, Spec.Trestle: { Ramps: TrestleRamps.Bents } trestle }
            && (bents.From > plan.Profile.From || bents.To < plan.Profile.To))
        {
            findings.Add(TrestleFindings.SolidFeet(plan.Spec.Key, plan.Profile, bents, trestle));
        }
    }
}
