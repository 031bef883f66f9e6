using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using static System.FormattableString;

namespace PlatformForge.Exports.Paper.FullSize;

// The body and how it is divided.
internal sealed partial class PlanFigures
{
    private void Body()
    {
        CopingAreas();
        Point2[] front = [.. Along(plan.CopingFront, From, To)], back = [.. Along(plan.Back, From, To)];
        outline = [.. front, .. back.Reverse()];
        Line(FullSizeLine.CopingEdge, front);
        Line(FullSizeLine.PlatformEnd, [front[0], back[0]]);
        Line(FullSizeLine.PlatformEnd, [front[^1], back[^1]]);
        Line(plan.Body.FarCopingBack is null ? FullSizeLine.BackEdge : FullSizeLine.CopingEdge, back);
        Line(FullSizeLine.WallFoot, Foot());
        if (plan.Bank is { } bank)
        {
            Line(FullSizeLine.WallFoot, Along(bank.Foot, From, To));
            lines.AddRange(bank.Returns.Select(r => new FigureLine(FullSizeLine.WallFoot, [.. r.Toe, r.Corner])));
        }

        Line(FullSizeLine.CopingBack, Along(plan.CopingBack, From, To));
        if (plan.Body.FarCopingBack is { } far)
        {
            Line(FullSizeLine.WallFoot, Along(plan.Body.FarWallFace, From, To));
            Line(FullSizeLine.CopingBack, Along(far, From, To));
        }

        Joints();
    }

    // In pieces, of which a sheet takes those that lie on it.
    private void CopingAreas()
    {
        int pieces = Math.Max(1, (int)Math.Ceiling((To - From) / AreaPiece));
        for (int i = 0; i < pieces; i++)
        {
            double a = From + ((To - From) * i / pieces), b = From + ((To - From) * (i + 1) / pieces);
            foreach (var coping in plan.Body.Top.Where(s => s.Role == StripRole.Coping))
            {
                Area(FullSizeLine.Coping, Along(coping.Near, a, b).Concat(Along(coping.Far, a, b).Reverse()));
            }
        }

        lines.AddRange(CopingLines.Areas(plan).Select(a => new FigureLine(FullSizeLine.Coping, a.Ring, IsArea: true)));
    }

    // Joints and lines on top.
    private void Joints()
    {
        foreach (var joint in PavingLines.Of(plan))
        {
            Line(FullSizeLine.PavingJoint, joint.Select(Place));
        }

        foreach (var (face, joint) in plan.Faces.SelectMany(f => f.CopingJoints.Select(j => (f, j))))
        {
            Line(FullSizeLine.SlabJoint, [face.ToLayout(joint, face.CopingFront.At(joint)), face.ToLayout(joint, face.CopingBack.At(joint))]);
        }

        lines.AddRange(plan.Faces.SelectMany(f => CopingLines.Of(f, plan.Spec.Coping)).Select(l => new FigureLine(FullSizeLine.CopingLine, [.. l])));
        lines.AddRange(CopingLines.OfReturns(plan).Select(l => new FigureLine(FullSizeLine.SlabJoint, l)));
        lines.AddRange(CopingLines.InnerEdges(plan).Select(l => new FigureLine(FullSizeLine.CopingBack, l)));

        foreach (var white in plan.Body.Lines)
        {
            Line(FullSizeLine.WhiteLine, Along(white.Near, white.From, white.To));
            Line(FullSizeLine.WhiteLine, Along(white.Far, white.From, white.To));
        }
    }

    // The foot of the wall under the coping, which steps forward to each of its fronts.
    private IEnumerable<Point2> Foot()
    {
        double[] breaks = [From, .. plan.Fittings.Where(r => r.StepsOut).SelectMany(r => r.Places).Where(p => !p.IsFar && p.To > From && p.From < To)
            .SelectMany(p => new[] { Math.Max(From, p.From), Math.Min(To, p.To) }), To];
        return breaks.Order().Zip(breaks.Order().Skip(1), (a, b) => (From: a, To: b)).Where(p => p.To > p.From)
            .SelectMany(p => Along(plan.WallFace.Shifted(plan.PanelDepthAt((p.From + p.To) / 2)), p.From, p.To));
    }

    // Cuts, joints of the baseboard, ramp heads, and the numbers of the sections.
    private void Divisions()
    {
        var cuts = platform.Sections.Cuts;
        for (int i = 0; i < cuts.Count; i++)
        {
            double s = cuts[i];
            var across = Back(s) - Front(s);
            var outward = across * (1 / across.Length);
            bool baseboard = plan.Spec.BaseboardJoints.Any(j => Math.Abs(j - s) < SamePlace);
            var (low, high) = Across(s);
            Line(FullSizeLine.Cut, [Front(s) - (outward * 2), Back(s) + (outward * 4)]);
            if (baseboard)
            {
                Line(FullSizeLine.BaseboardJoint, [chart.PointAt(s, low), chart.PointAt(s, high)]);
            }

            words.Add(new(Invariant($"{i + 1} | {i + 2}"), Back(s), chart.At(s).Tangent, outward, FigureType.Strong) { Off = [6.5, 10] });
            words.Add(new(Invariant($"{(baseboard ? "baseboard joint, " : "")}cut at {s:0.0}"), Back(s), chart.At(s).Tangent, outward,
                FigureType.Small)
            { Off = [10, 13] });
        }

        Ends();
        Sections();
    }

    private void Ends()
    {
        foreach (double end in (double[])[From, To])
        {
            var across = Back(end) - Front(end);
            words.Add(new(Invariant($"end of the platform at {end:0.0}"), Back(end), chart.At(end).Tangent, across * (1 / across.Length),
                FigureType.Small)
            { Off = [4, 7] });
        }

        foreach (double head in plan.Profile.HeadsBetween(From, To))
        {
            Line(FullSizeLine.RampHead, [Front(head), Back(head)]);
            words.Add(new("ramp head", OnDeck(head, 0.5), Outward(head), default, FigureType.Small));
        }
    }

    private void Sections()
    {
        foreach (var section in platform.Sections.Sections)
        {
            double middle = (section.From + section.To) / 2, arrow = Math.Min(8, section.Length / 4);
            var along = chart.At(middle).Tangent;
            words.Add(new(Invariant($"section {section.Number} of {section.Count}"), OnDeck(middle, 0.4), along, default, FigureType.Large));
            Point2 tip = OnDeck(middle, 0.6) + (along * arrow), tail = OnDeck(middle, 0.6) - (along * arrow);
            Line(FullSizeLine.Arrow, [tail, tip]);
            Line(FullSizeLine.Arrow, [tip - (along * 2) + along.Left, tip, tip - (along * 2) - along.Left]);
        }
    }
}
