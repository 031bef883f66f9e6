using System.Text.RegularExpressions;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Reading;
using PlatformForge.Tests.Projects.Remedies;
using PlatformForge.Units;

namespace PlatformForge.Tests.Projects;

/// <summary>Mutated projects end in a project or in findings with a place, whatever was done to them.</summary>
public class ReaderFuzz
{
    private static readonly string[] Scraps =
        ["[", "]", "[[", "]]", "{", "}", "=", ",", "\"", "'", "\"\"\"", "#", "\n", "\t", "\\", "\\u12", "nan", "inf", "-", "1e308", "1e999", "0x",
            "99999999999999999999", "true", ".", "..", "é", "\u0001", "\U0001F683", "a.b.c = 1\n", "[layout]\n", "[[platform]]\n"];

    [Property(MaxTest = 300)]
    public Property A_mutated_project_is_read_or_refused_never_thrown() =>
        Prop.ForAll(Arb.From(Mutations()), text =>
        {
            var read = Samples.Read(text);
            Assert.Empty(read.Findings.SelectMany(f => Sentences.Complaints(f, text)));
            return read.Succeeded
                || (read.Findings.Count > 0 && read.Findings.All(f => f.Severity != Severity.Error || (f.Line >= 1 && f.Column >= 1 && f.Message.Length > 0)));
        });

    /// <summary>A heading that is offered in place of a spoilt one is one: with it in the line's place, the fault is elsewhere or gone.</summary>
    [Property(MaxTest = 200)]
    public Property A_heading_that_is_offered_is_taken() =>
        Prop.ForAll(Arb.From(from name in Gen.Elements("layout", "platform", "platform.fence", "my own", "")
                             from before in Gen.Elements("[", "[[", "[ [", "[[[")
                             from after in Gen.Elements("]", "]]", "]nan", "] ]", "", "]x]", "] [b]")
                             select before + name + after), heading =>
                         {
                             string[] lines = [.. Samples.Small.Split('\n'), heading, ""];
                             var told = Samples.Read(string.Join('\n', lines)).Findings;
                             if (told.FirstOrDefault(f => f.Code == "PF1005") is not { } fault
                                 || Regex.Match(fault.Remedy, @"^Write (?<heading>\[.*\])( on a line of its own)?\.$") is not { Success: true } offered)
                             {
                                 return;
                             }

                             lines[fault.Line - 1] = offered.Groups["heading"].Value;
                             Assert.DoesNotContain(Samples.Read(string.Join('\n', lines)).Findings, f => f.Code == "PF1005" && f.Line == fault.Line);
                         });

    [Property(MaxTest = 200)]
    public bool Any_bytes_are_text_or_a_finding(byte[] bytes)
    {
        var text = ProjectText.Decode(bytes, "x");
        return text.Value is null ? text.Findings.Count == 1 : Samples.Read(text.Value) is not null;
    }

    private static Gen<string> Mutations() =>
        from sample in Gen.Elements(Samples.Pendlewick, Samples.Small, PresetShelf.Sample("straight-halt")!)
        from count in Gen.Choose(1, 6)
        from changes in Gen.ArrayOf(Change(), count)
        select changes.Aggregate(sample, (text, change) => change(text));

    private static Gen<Func<string, string>> Change() =>
        from place in Gen.Choose(0, 1_000_000)
        from length in Gen.Choose(0, 30)
        from scrap in Gen.Elements(Scraps)
        from kind in Gen.Choose(0, 3)
        select (Func<string, string>)(text =>
        {
            int at = text.Length == 0 ? 0 : place % text.Length, end = Math.Min(text.Length, at + length);
            return kind switch
            {
                0 => text[..at] + scrap + text[at..],
                1 => text[..at] + text[end..],
                2 => text[..end] + text[at..],
                _ => text[..at] + scrap + text[end..],
            };
        });
}
