using PlatformForge.Geometry;

namespace PlatformForge.Track.Surveys.Fitting.Lines;

/// <summary>Lays a profile out as a centreline.</summary>
internal static class ProfileLine
{
    // Transitions and stretches shorter than this, mm, are left out; the rest moves by less than rounding.
    private const double LeastElement = 1e-6;

    /// <summary>The centreline of a profile from a first point and heading.</summary>
    public static Centreline Build(string name, CurvatureProfile profile, Point2 start, double heading)
    {
        var elements = new List<CentrelineElement>();
        double done = 0;
        int kink = 0;
        int[] kinks = [.. Enumerable.Range(0, profile.KinkAt.Length).OrderBy(k => profile.KinkAt[k])];

        void Lay(double to, double k0, double k1)
        {
            double from = done, whole = to - done;
            while (done < to - LeastElement)
            {
                double next = kink < kinks.Length && profile.KinkAt[kinks[kink]] < to ? Math.Max(done, profile.KinkAt[kinks[kink]]) : to;
                if (next - done > LeastElement)
                {
                    double a = k0 + ((k1 - k0) * (done - from) / whole), b = k0 + ((k1 - k0) * (next - from) / whole);
                    var element = new CentrelineElement(start, heading, next - done, a, b);
                    elements.Add(element);
                    (start, heading) = (element.At(element.Length).Position, element.HeadingAt(element.Length));
                    done = next;
                }

                if (next < to)
                {
                    heading += profile.KinkTurn[kinks[kink++]];
                }
            }
        }

        for (int j = 0; j < profile.Middles.Length; j++)
        {
            double half = profile.ChangeLength(j) / 2;
            Lay(profile.Middles[j] - half, profile.Curvatures[j], profile.Curvatures[j]);
            Lay(profile.Middles[j] + half, profile.Curvatures[j], profile.Curvatures[j + 1]);
        }

        Lay(profile.Length, profile.Curvatures[^1], profile.Curvatures[^1]);
        return new(name, elements);
    }
}
