using PlatformForge.Exports.Files;

namespace PlatformForge.Exports.Tables;

/// <summary>A chainage worth setting out, mm, and what is there.</summary>
internal sealed record SetOutMark(double Chainage, string Note)
{
    // Marks nearer to one another than this, mm, are one.
    private const double Same = 0.05;

    /// <summary>Ends, ramp heads, cuts, and what features say: rising, those at one place told together.</summary>
    public static IEnumerable<SetOutMark> Of(PlatformDossier platform)
    {
        var plan = platform.Plan;
        var profile = plan.Profile;
        var marks = new List<SetOutMark> { new(profile.From, "start"), new(profile.To, "end") };
        marks.AddRange(profile.HeadsBetween(profile.From, profile.To).Select(h => new SetOutMark(h, "ramp head")));
        marks.AddRange(platform.Sections.Cuts.Select((c, i) => new SetOutMark(c, FormattableString.Invariant($"cut {i + 1}/{i + 2}"))));
        marks.AddRange(plan.Features.SelectMany(f => f.SetOuts).Select(p => new SetOutMark(p.Chainage, p.Note)));
        return Together(marks.OrderBy(m => m.Chainage));
    }

    /// <summary>The same with plain chainages between them.</summary>
    public static IEnumerable<SetOutMark> Every(PlatformDossier platform, double step)
    {
        var profile = platform.Plan.Profile;
        var marks = Of(platform).ToList();
        for (double k = Math.Ceiling(profile.From / step); k * step <= profile.To; k++)
        {
            double s = k * step;
            if (!marks.Exists(m => Math.Abs(m.Chainage - s) < step / 100))
            {
                marks.Add(new(s, ""));
            }
        }

        return marks.OrderBy(m => m.Chainage);
    }

    private static IEnumerable<SetOutMark> Together(IEnumerable<SetOutMark> rising)
    {
        SetOutMark? held = null;
        foreach (var mark in rising)
        {
            if (held is not null && mark.Chainage - held.Chainage < Same)
            {
                held = held with { Note = held.Note + "; " + mark.Note };
                continue;
            }

            if (held is not null)
            {
                yield return held;
            }

            held = mark;
        }

        if (held is not null)
        {
            yield return held;
        }
    }
}
