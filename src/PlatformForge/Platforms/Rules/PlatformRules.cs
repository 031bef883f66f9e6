using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Rules;

/// <summary>Rules that need the spec and the track only, before anything is swept or shaped.</summary>
internal static class PlatformRules
{
    /// <summary>Least width of a platform, full-size mm: 6 ft (inspecting officers' requirement of 1858).</summary>
    public const double LeastWidth = 6 * FullSize.Foot;

    // Shortest platform in mm that is worth the name.
    private const double ShortestPlatform = 5;

    // Least distance of a forced cut from the platform's ends, mm.
    private const double CutFromEnd = 2 * PlatformForge.Platforms.Plans.Keepout.UsualCutClear;

    public static void Face(
        PlatformSpec spec, Centreline chart, string vehicle, double longest, bool startsAtBuffers, bool endsAtBuffers, List<Finding> findings)
    {
        var face = spec.Face;
        string from = $"{spec.FaceKey}.from", to = $"{spec.FaceKey}.to";
        if (face.To - face.From < ShortestPlatform)
        {
            findings.Add(PlatformFindings.FaceReversed(to, face.From, face.To, ShortestPlatform));
            return;
        }

        // What is offered has to pass all of these rules, the other end as it will have to be.
        double before = face.From, after = chart.Length - face.To, needBefore = startsAtBuffers ? 0 : longest, needAfter = endsAtBuffers ? 0 : longest;
        double first = needBefore, last = Floor(chart.Length - needAfter);
        double? rightFrom = Math.Min(face.To, last) - first >= ShortestPlatform ? first : null;
        double? rightTo = last - Math.Max(face.From, first) >= ShortestPlatform ? last : null;
        if (before < 0)
        {
            findings.Add(PlatformFindings.BeyondTrack(from, face.From, chart.Length, vehicle, needBefore, rightFrom));
        }
        else if (before < needBefore)
        {
            findings.Add(PlatformFindings.TooLittleTrack(from, "before", vehicle, before, longest, rightFrom));
        }

        if (after < 0)
        {
            findings.Add(PlatformFindings.BeyondTrack(to, face.To, chart.Length, vehicle, needAfter, rightTo));
        }
        else if (after < needAfter)
        {
            findings.Add(PlatformFindings.TooLittleTrack(to, "after", vehicle, after, longest, rightTo));
        }
    }

    public static void Body(PlatformSpec spec, PlatformSite site, List<Finding> findings)
    {
        Width(spec, site, findings);
        Parts(spec, site, findings);
        Line(spec, findings);
        BankRule.Check(spec, site, findings);
        SkewRule.Check(spec, site, findings);
        CopingReturnRule.Check(spec, findings);
        TrestleRule.Check(spec, site, findings);
        PierRule.Check(spec, findings);
        DownpipeRule.Check(spec, findings);
        ProfileRule.Check(spec, site, findings);
        OpeningRule.Check(spec, site, findings);
        Cuts(spec, findings);
    }

    private static void Width(PlatformSpec spec, PlatformSite site, List<Finding> findings)
    {
        var (deck, coping) = (spec.Deck, spec.Coping);
        string width = $"{spec.Key}.deck.width";
        double least = Math.Max(coping.Width, coping.Overhang + spec.FrontDepth + spec.BackDepth);
        if (spec.IsIsland)
        {
            // Its width is what the faces leave, and is held to its least where they are known.
        }
        else if (deck.Width < least)
        {
            var (all, what) = LeastDeck.Of(spec);
            findings.Add(PlatformFindings.DeckTooNarrow(width, deck.Width, all, what));
        }
        else if (spec.Back.Kind != BackKind.Open && deck.Width < site.Scale.ToModel(LeastWidth) - Grain)
        {
            findings.Add(PlatformFindings.NarrowPlatform(width, deck.Width, site.Scale.ToModel(LeastWidth), "6 ft, inspecting officers' requirement of 1858"));
        }
    }

    // What one part leaves another.
    private static void Parts(PlatformSpec spec, PlatformSite site, List<Finding> findings)
    {
        var atMost = Most(spec, findings);
        SlabCuts(spec, atMost);
        double high = site.RailTop + spec.Height;
        const string TooThick = "is more than the platform's height over the baseboard";
        atMost("coping.thickness", "coping thickness", spec.Coping.Thickness, high, TooThick, ("make the platform higher", null));
        atMost("deck.thickness", "deck thickness", spec.Deck.Thickness, high, TooThick, ("make the platform higher", null));
    }

    // What is taken off slabs leaves enough of them, and what hangs over leaves enough to lie on.
    private static void SlabCuts(PlatformSpec spec, Action<string, string, double, double, string, (string Sentence, Cure? Cure)> atMost)
    {
        var coping = spec.Coping;
        atMost(
            "coping.joint_depth",
            "groove depth",
            coping.JointDepth,
            coping.Thickness - LineMake.LeastFloor,
            "leaves too little of the coping under it",
            ("make the coping thicker, or leave the groove out", Cure.Set($"{spec.Key}.coping.joint_depth", 0)));
        atMost(
            "coping.arris_chamfer",
            "chamfer",
            coping.ArrisChamfer,
            Math.Min(coping.Thickness, coping.Width) / 2,
            "takes more than half of the coping",
            ("make the coping larger", null));
        atMost(
            "coping.overhang",
            "overhang",
            coping.Overhang,
            coping.Width - spec.SeatDepth,
            "leaves the coping less than the wall to lie on",
            ("make the coping wider, or the front wall thinner", Cure.Set($"{spec.Key}.coping.width", spec.SeatDepth + coping.Overhang)));
        atMost(
            "coping.joint_width",
            "joint width",
            coping.JointWidth,
            coping.SlabLength > 0 ? coping.SlabLength / 4 : coping.JointWidth,
            "takes more than a quarter of a slab",
            ("make the slabs longer", null));
    }

    private static void Line(PlatformSpec spec, List<Finding> findings)
    {
        var (deck, coping, atMost) = (spec.Deck, spec.Coping, Most(spec, findings));
        if (spec.WhiteLine is { } line)
        {
            double deepest = Math.Min(coping.Thickness, deck.Thickness) - LineMake.LeastFloor;
            if (line.GrooveDepth > 0)
            {
                atMost(
                    "line.groove_depth",
                    "groove depth",
                    line.GrooveDepth,
                    deepest,
                    "leaves too little under it",
                    ("make deck and coping thicker, or leave the groove out", Cure.Set($"{spec.Key}.line.groove_depth", 0)));
            }
            else if (line.Form != LineForm.Paint)
            {
                atMost("line.depth", "depth", line.Depth, deepest, "leaves too little under it", ("make deck and coping thicker", null));
            }

            atMost(
                "line.inset",
                "white line's inset",
                line.Inset,
                deck.Width - line.Width,
                "puts it off the deck",
                ("make the line narrower or the deck wider", Cure.Set($"{spec.Key}.line.width", Math.Round(deck.Width / 2, 1))));
            if (line.Inset < coping.ArrisChamfer)
            {
                findings.Add(PlatformFindings.LineOnArris($"{spec.Key}.line.inset", line.Inset, coping.ArrisChamfer));
            }
        }

        StripRules.Check(spec, atMost, findings);
    }

    private static void Cuts(PlatformSpec spec, List<Finding> findings)
    {
        foreach (var (list, cuts) in new[] { ("cuts", spec.ForcedCuts), ("baseboard_joints", spec.BaseboardJoints) })
        {
            for (int i = 0; i < cuts.Count; i++)
            {
                double cut = cuts[i], first = spec.Face.From + CutFromEnd, last = spec.Face.To - CutFromEnd;
                if (cut < first || cut > last)
                {
                    findings.Add(PlatformFindings.ForcedCutOff(PlatformFindings.Indexed(spec.Key, list, i), cut, first, last));
                }
            }
        }
    }

    // Tells of a figure that is above the most it may be: its key, what it is, the figure, the most, why, and what else would do.
    private static Action<string, string, double, double, string, (string Sentence, Cure? Cure)> Most(PlatformSpec spec, List<Finding> findings) =>
        (key, what, value, most, why, instead) =>
        {
            // A groove of no depth is none.
            if (value > most + Grain && (value > 0 || !key.EndsWith("depth", StringComparison.Ordinal)))
            {
                findings.Add(PlatformFindings.CopingPart($"{spec.Key}.{key}", what, value, most, why, instead));
            }
        };

    // To the thousandth that is shown.
    private static double Floor(double value) => Math.Floor(value * 1000) / 1000;

    // Sums of stated lengths that differ by less than this, mm, are equal.
    private const double Grain = Tolerances.Rounding;
}
