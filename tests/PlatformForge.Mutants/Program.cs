using System.Diagnostics;
using System.Globalization;
using PlatformForge.Mutants;

// run.sh beside this file tells what can be asked.
if (args is ["child", .. var types])
{
    return Child.Run(types);
}

var asked = Asked.Of(args);
var trial = new Trial(asked.Folder);
switch (asked.Command)
{
    case "prepare":
        Work.Prepare(asked, trial);
        return 0;
    case "go":
        Work.Go(asked, trial);
        return 0;
    case "report":
        return Account.Print(asked, trial);
    case "all":
        Work.Prepare(asked, trial);
        Work.Go(asked, trial);
        Work.Go(asked with { Wide = true }, trial);
        return Account.Print(asked, trial);
    default:
        Console.Error.WriteLine("Known: prepare, go, report, all; --rooms A,B --count N --seed S --jobs N --minutes M --wide --keys K,L --least PERCENT");
        return 2;
}
