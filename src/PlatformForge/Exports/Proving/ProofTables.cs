using PlatformForge.Exports.Files;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.Tables;
using PlatformForge.Proofs;

namespace PlatformForge.Exports.Proving;

/// <summary>The figures of gauges and proofs, for people as a table and for programs as JSON.</summary>
internal static class ProofTables
{
    /// <summary>A kind in a word or two, as the trade says it.</summary>
    public static string Word(ProofKind kind) => kind switch
    {
        ProofKind.Slice => "test slice",
        ProofKind.SlideGauge => "slide gauge",
        ProofKind.ThrowBoard => "throw board",
        ProofKind.ThrowShoe => "shoe of a throw board",
        ProofKind.Footprint => "footprint",
        ProofKind.Mask => "mask",
        ProofKind.JointCoupon => "coupon of joints",
        ProofKind.HoleCoupon => "coupon of holes",
        _ => "strip",
    };

    public static byte[] Csv(ProofSet set)
    {
        var csv = new CsvText("platform", "mark", "name", "kind", "figure", "value", "unit");
        foreach (var proof in set.Proofs)
        {
            foreach (var figure in Told(proof))
            {
                csv.Row(proof.Platform, proof.Mark, proof.Name, Word(proof.Kind), figure.What,
                    PlatformForge.Exports.Drawings.Ink.Figures.Fixed(figure.Value, figure.Unit.Length == 0 ? 0 : 3),
                    figure.Unit);
            }
        }

        return csv.ToBytes();
    }

    public static byte[] Json(Dossier dossier, ProofSet set, Func<Proof, string> stl) => JsonForms.ToBytes(new ProofDocument(
        dossier.Project,
        dossier.Printer.Stretch.X,
        dossier.Printer.Stretch.Y,
        [.. set.Proofs.Select(p => new ProofForm(p.Platform, p.Mark, p.Name, Word(p.Kind), stl(p), p.Use,
            [.. Told(p).Select(f => new ProofFigureForm(f.What, f.Value, f.Unit))]))]), ProofJson.Forms.ProofDocument);

    /// <summary>What a proof shows, and what printing it takes.</summary>
    public static IEnumerable<ProofFigure> Told(Proof proof) =>
    [
        .. proof.Figures,
        new("size on the bed, x", proof.Size.X), new("size on the bed, y", proof.Size.Y), new("height on the bed", proof.Size.Z),
        new("plastic", proof.Estimate.Grams, "g"), new("printing", proof.Estimate.Hours * 60, "min"),
    ];
}

/// <summary>Gauges and proofs of a build.</summary>
internal sealed record ProofDocument(string Project, double StretchX, double StretchY, IReadOnlyList<ProofForm> Proofs);

/// <summary>One of them: the mark cut into it, what it is, its file, how it is used, what it shows.</summary>
internal sealed record ProofForm(string Platform, string Mark, string Name, string Kind, string File, string Use, IReadOnlyList<ProofFigureForm> Figures);

/// <summary>A figure with what it is of and its unit.</summary>
internal sealed record ProofFigureForm(string What, double Value, string Unit);
