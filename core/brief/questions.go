package brief

import "slipfit/core/part"

// Question is one question of the conversation, in words a customer knows. "I don't know" is always an answer: the field is
// left out, the usual answer makes the floors and the high one makes what is enough.
type Question struct {
	Field   string   // field of the activity the answer fills; a path such as place.noise_dba outside activities
	Asks    string   // the question
	Choices []string // words to choose from; none where the answer is a number or a yes
	YesNo   bool     // the answer is yes or no
	Usual   string   // what is taken when the customer does not know
	High    string   // what there is room for then; the same where nothing more is allowed for
}

// Topic is a kind of work: the question whether it is done, and those that size it.
type Topic struct {
	Field     string // field of an Activity
	Name      string
	Opens     string
	Questions []Question
}

// number, choice and yes make the questions of a topic; what stands for "I don't know" is heard from the activity itself.
func number(field, asks string) Question { return Question{Field: field, Asks: asks} }

func choice(field, asks string, words []string) Question {
	return Question{Field: field, Asks: asks, Choices: words}
}

func yes(field, asks string) Question {
	return Question{Field: field, Asks: asks, YesNo: true, Usual: "no", High: "no"}
}

func none(field, asks string) Question {
	return Question{Field: field, Asks: asks, Usual: "none", High: "none"}
}

// Topics lists what to talk about, with the answers that stand for "I don't know" as the activities take them.
func Topics() []Topic {
	hours := number("hours_week", "About how many hours a week?")
	at := yes("at_once", "Does it go on while you do the other things?")
	list := []struct {
		Topic
		kind kind
	}{
		{Topic{Field: "video", Opens: "Do you cut films or grade them?", Questions: []Question{hours, at,
			choice("format", "How does your camera record? The menu or the box of the camera says it.", Footage("").Values()),
			number("width_px", "How many pixels wide is the picture?"),
			number("height_px", "How many pixels high?"),
			number("frames_s", "How many frames a second?"),
			none("camera_mbit_s", "Does the camera's sheet give a bit rate, in megabits a second?"),
			number("streams", "How many pictures play at once at most: camera angles, layers?"),
			choice("finish", "Do you cut, grade the colours, or build effects in layers?", Finish("").Values()),
			choice("delivers", "In which format do you hand the finished film over?", part.Codec("").Values()),
			number("hours_kept", "How many hours of footage do you keep within reach?"),
			number("hours_in_hand", "How many hours belong to the films you work on now?"),
			number("new_hours_week", "How many hours of footage come in a week?")}}, &Video{}},
		{Topic{Field: "modelling", Opens: "Do you build models or scenes on the screen and render pictures of them?", Questions: []Question{hours, at,
			number("million_triangles", "How many million triangles has a large scene?"),
			number("textures", "How many large textures lie on it?"),
			number("width_px", "How many pixels wide is a finished picture?"),
			number("height_px", "How many pixels high?"),
			number("samples", "How many samples a pixel do you render with?"),
			number("pictures", "How many pictures do you render in one go?"),
			number("wait_min", "How many minutes may they take?"),
			choice("renders_on", "Does your program render on the graphics card or on the processor?", RenderOn("").Values()),
			number("kept_gb", "How many gigabytes are the projects you keep?")}}, &Modelling{}},
		{Topic{Field: "photogrammetry", Opens: "Do you make models of things from photographs?", Questions: []Question{hours, at,
			number("pictures", "How many photographs do you take of one thing?"),
			number("megapixels", "How many megapixels has the camera?"),
			number("wait_min", "How many minutes may a model take?"),
			number("objects_week", "How many things do you do in a week?"),
			number("objects_kept", "How many do you keep, with their photographs?"),
			yes("raw", "Do you keep the raw photographs too?")}}, &Photogrammetry{}},
		{Topic{Field: "photography", Opens: "Do you develop or retouch photographs?", Questions: []Question{hours, at,
			number("megapixels", "How many megapixels has the camera?"),
			number("pictures_year", "How many photographs do you keep of a year?"),
			number("years_kept", "How many years of them should be on the machine?"),
			number("pictures_at_once", "How many do you develop in one go, after a job?"),
			number("layers", "How many layers has a photograph you retouch?")}}, &Photography{}},
		{Topic{Field: "games", Opens: "Do you play games on it?", Questions: []Question{hours, at,
			choice("class", "What sort: light, ordinary, the demanding ones, or those with traced light?", GameClass("").Values()),
			number("width_px", "How many pixels wide is the screen?"),
			number("height_px", "How many pixels high?"),
			number("frames_s", "How many pictures a second do you want?"),
			number("installed", "How many games are installed at a time?"),
			number("each_gb", "How many gigabytes is one?")}}, &Games{}},
		{Topic{Field: "software", Opens: "Do you write software?", Questions: []Question{hours, at,
			number("source_files", "How many source files does a full build take in?"),
			choice("language", "Is it scripted, compiled, or compiled with heavy templates?", CodeClass("").Values()),
			number("wait_min", "How many minutes may a full build take?"),
			number("projects_gb", "How many gigabytes are all your projects with their tools?")}}, &Software{}},
		{Topic{Field: "sound", Opens: "Do you record, mix or make music, or search recordings?", Questions: []Question{hours, at,
			number("tracks", "How many tracks has a full mix?"),
			number("plug_ins_a_track", "How many plug-ins sit on a track?"),
			choice("plug_ins", "Are they light, ordinary, or heavy?", PlugInWeight("").Values()),
			number("buffer_frames", "What buffer do you play with, in frames?"),
			number("sample_hz", "What sample rate, in hertz?"),
			number("libraries_gb", "How many gigabytes are your sample libraries?"),
			number("zones", "How many sampled notes are held ready in a large piece? Not known, it is 200 for each gigabyte of libraries, 20000 at least."),
			number("channels_recorded", "How many channels do you record at once?"),
			number("hours_kept", "How many hours of recordings do you keep?"),
			none("search_hours_week", "How many hours of recordings do you search a week, for calls or words?")}}, &Sound{}},
		{Topic{Field: "statistics", Opens: "Do you work through large tables of data?", Questions: []Question{hours, at,
			number("million_rows", "How many million rows has the largest table?"),
			number("columns", "How many columns?"),
			number("passes", "How often does a model go through it: repeats, trees, samples?"),
			number("wait_min", "How many minutes may a model take?"),
			yes("one_thread", "Does your program use one core only?"),
			number("kept_gb", "How many gigabytes of data do you keep?")}}, &Statistics{}},
		{Topic{Field: "local_models", Opens: "Do you want to run a language model on the machine itself?", Questions: []Question{hours, at,
			number("million_parameters", "How many million parameters has the largest you want to run?"),
			number("bits", "How many bits a weight?"),
			number("context_tokens", "How many tokens of text should it hold in mind?"),
			number("tokens_s", "How many tokens a second should it write?"),
			choice("runs_on", "Should its weights lie on the graphics card or in main memory?", RunsOn("").Values()),
			number("kept_gb", "How many gigabytes of models do you keep?")}}, &LocalModels{}},
		{Topic{Field: "drafting", Opens: "Do you draw or construct technical things?", Questions: []Question{hours, at,
			number("parts", "How many parts has the largest assembly?"),
			yes("analysis", "Is strength or flow computed too?"),
			yes("flat", "Are the drawings flat only?")}}, &Drafting{}},
		{Topic{Field: "live", Opens: "Do you send pictures live?", Questions: []Question{hours, at,
			number("width_px", "How many pixels wide is the picture sent?"),
			number("height_px", "How many pixels high?"),
			number("frames_s", "How many frames a second?"),
			number("cameras", "How many cameras at once?"),
			number("hours_kept", "How many hours of recordings do you keep?")}}, &Live{}},
		{Topic{Field: "virtual_machines", Opens: "Do you run other systems inside this one?", Questions: []Question{hours, at,
			number("guests", "How many at once?"),
			number("threads_each", "How many threads has each?"),
			number("memory_each_gib", "How many gigabytes of memory has each?"),
			number("disk_each_gb", "How many gigabytes of disk has each?")}}, &Guests{}},
		{Topic{Field: "office", Opens: "Letters, the web, bills, films, calls?", Questions: []Question{hours, at,
			number("web_pages", "How many web pages do you leave open?"),
			number("people", "How many people have a desk of their own on it?"),
			number("files_gb", "How many gigabytes are everybody's files, photographs and music?"),
			none("film_hours", "How many hours of films do you keep?")}}, &Office{}},
		{Topic{Field: "server", Opens: "Should it serve others in the house from a corner?", Questions: []Question{hours, at,
			number("store_gb", "How many gigabytes should it keep for them?"),
			number("people", "How many people use it?"),
			number("services", "How many programs should it run for them besides files?"),
			yes("fast", "Are large files worked on over the network?")}}, &Server{}},
	}
	topics := make([]Topic, len(list))
	for i, entry := range list {
		t := entry.Topic
		t.Name = entry.kind.name()
		d := (&Brief{}).hear(entry.kind, &Activity{}, &part.Calibration{})
		for j := range t.Questions {
			for _, a := range d.heard {
				if q := &t.Questions[j]; a.field == q.Field {
					q.Usual, q.High = a.usual, a.high
				}
			}
		}
		topics[i] = t
	}
	return topics
}

// Fields of the two questions that ask for screens in turn.
const (
	ownScreens = "screens.owned"
	newScreens = "screens.bought"
)

// Screens asks in two turns what one question of the surroundings asks at once: which screens are there already and which are
// to be bought. Not knowing the first means none is known, not knowing the second that none is bought beside those that are
// there, or one that suits the work where there are none.
func Screens() [2]Question {
	const none, suits = "none that we know of", "none beside those they have; where they have none, one that suits the work"
	return [2]Question{
		{Field: ownScreens, Asks: "Which screens do they have already that it will feed: how many pixels, how fast?", Usual: none, High: none},
		{Field: newScreens, Asks: "Which screens are to be bought with it?", Usual: suits, High: suits},
	}
}

// Surroundings lists the questions that are not about one kind of work.
func Surroundings() []Question {
	ask := func(field, asks, usual string) Question {
		return Question{Field: field, Asks: asks, Usual: usual, High: usual}
	}
	return []Question{
		ask("screens", "Which screens will it feed: how many pixels, how fast, and are they yours already?", "one that suits the work"),
		{Field: "network", Asks: "How does it reach the network?", Choices: []string{"cable", "radio", "both", "none"}, Usual: "cable", High: "cable"},
		{Field: "place.stands", Asks: "Where will it stand, seen from the chair?", Choices: []string{"desk-left", "desk-right", "floor-left", "floor-right", "shelf"}, Usual: "nowhere in particular", High: "nowhere in particular"},
		ask("place.chair_mm", "How far from your ear, in millimetres?", "700 mm"),
		ask("place.noise_dba", "How loud may it be at the chair: a library is about 30 dB(A), an office 40?", "no limit"),
		ask("place.width_mm", "How wide is the free place, in millimetres?", "no limit"),
		ask("place.height_mm", "How high?", "no limit"),
		ask("place.depth_mm", "How deep, cables included?", "no limit"),
		ask("place.room_c", "How warm is the room on an ordinary day, in °C?", "22 °C"),
		ask("place.hottest_c", "And on the hottest day?", "30 °C"),
		ask("place.altitude_m", "How high above the sea do you live, in metres? Thin air cools less.", "0 m"),
		ask("place.mains_v", "What is the mains voltage?", "230 V"),
		ask("place.circuit_a", "For how many amperes is the outlet's fuse or breaker?", "10 A"),
		ask("place.kwh_minor", "What does a kilowatt-hour cost?", "0.30"),
		ask("wishes.volume_l", "How large may the case be, in litres? A shoe box is about 8.", "no limit"),
		{Field: "wishes.glass", Asks: "Do you want to see into it through glass?", YesNo: true, Usual: "either", High: "either"},
		{Field: "wishes.lighting", Asks: "May parts light up?", YesNo: true, Usual: "either", High: "either"},
		ask("wishes.prefer_makers", "Are there makers you like?", "none"),
		ask("wishes.avoid_makers", "Are there makers you will not have?", "none"),
		ask("wishes.upgrade_years", "In how many years will you think of it anew?", "5"),
		ask("wishes.ups_min", "Must it run through a power cut, and how many minutes?", "no"),
		{Field: "wishes.in_stock", Asks: "Must every part lie on the shelf today?", YesNo: true, Usual: "no", High: "no"},
		{Field: "copies", Asks: "Should what you keep lie on two drives of the machine? It is no backup, but a dead drive then loses nothing.", YesNo: true, Usual: "no", High: "no"},
		{Field: "error_correcting", Asks: "Would a wrong digit that nobody notices do harm? Then memory should correct its errors.", YesNo: true, Usual: "no", High: "no"},
		ask("owned", "Which parts do you have already that should be used?", "none"),
		ask("budget_minor", "What can you spend in all, tax and labour included?", "not named"),
	}
}
